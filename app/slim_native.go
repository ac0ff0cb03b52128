//go:build !js

package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"coilbook/slim"
)

// slimBuild prepares the build for the browser, or finishes what it made.
func slimBuild(args []string, _ io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("slim", flag.ContinueOnError)
	goroot := flags.String("goroot", "", "`directory` of the toolchain, as \"go env GOROOT\" prints it")
	out := flags.String("out", "", "`path` of a directory for the build, whose flags are printed, or of the finished program")
	wasm := flags.String("wasm", "", "`file` with the compiled program, to be finished")
	if code, done := parse(flags, args, stderr); done {
		return code
	}
	var err error
	switch {
	case *wasm != "" && *out != "" && *goroot == "":
		err = finish(*wasm, *out)
	case *goroot != "" && *out != "":
		err = prepare(stdout, *goroot, *out)
	default:
		fmt.Fprintln(stderr, "coilbook slim: -out is needed, with -goroot before the build or -wasm behind it")
		return exitUsage
	}
	if err != nil {
		fmt.Fprintln(stderr, "coilbook slim:", err)
		return exitFailed
	}
	return exitDone
}

func prepare(stdout io.Writer, goroot, out string) error {
	flags, err := slim.Prepare(goroot, out)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintln(stdout, strings.Join(flags, " "))
	return err
}

// finish writes another file: the go command would take its own, changed, for
// up to date.
func finish(wasm, out string) error {
	program, err := os.ReadFile(wasm)
	if err != nil {
		return fmt.Errorf("reading the program: %w", err)
	}
	smaller, err := slim.Finish(program)
	if err != nil {
		return err
	}
	return os.WriteFile(out, smaller, 0o644)
}
