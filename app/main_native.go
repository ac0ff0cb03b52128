//go:build !js

// Command coilbook makes the site of the app and serves it.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
)

// Exit codes.
const (
	exitDone   = 0
	exitFailed = 1 // it could not be done
	exitUsage  = 2 // what was asked for, or what was read, makes no sense
)

type command struct {
	name, use string
	run       func(args []string, stdin io.Reader, stdout, stderr io.Writer) int
}

func commands() []command {
	return []command{
		{"serve", "serve the site in a directory on this machine", serve},
		{"site", "make the site from the compiled program", site},
		{"slim", "prepare and finish the build for the browser", slimBuild},
		{"size", "list what the program for the browser is made of", size},
		{"assess", "judge the readings of a session file", assessFile},
		{"converse", "find a fault in a dialogue of JSON lines", converse},
	}
}

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	if len(args) == 0 {
		usage(stderr)
		return exitUsage
	}
	for _, c := range commands() {
		if c.name == args[0] {
			return c.run(args[1:], stdin, stdout, stderr)
		}
	}
	if args[0] == "help" || args[0] == "-h" || args[0] == "--help" {
		usage(stdout)
		return exitDone
	}
	fmt.Fprintf(stderr, "coilbook: there is no command %q\n\n", args[0])
	usage(stderr)
	return exitUsage
}

func usage(w io.Writer) {
	fmt.Fprintln(w, "usage: coilbook COMMAND [flags]")
	for _, c := range commands() {
		fmt.Fprintf(w, "  %-8s %s\n", c.name, c.use)
	}
	fmt.Fprintln(w, "coilbook COMMAND -h lists the flags of a command.")
}

// parse reads the flags of a command that takes nothing else; done says that
// the command ends here, with that exit code.
func parse(flags *flag.FlagSet, args []string, stderr io.Writer) (code int, done bool) {
	flags.SetOutput(stderr)
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return exitDone, true
	case err != nil:
		return exitUsage, true
	case flags.NArg() > 0:
		fmt.Fprintf(stderr, "coilbook %s: unexpected %q\n", flags.Name(), flags.Arg(0))
		return exitUsage, true
	}
	return exitDone, false
}
