//go:build !js

package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"coilbook/app/words"
	"coilbook/engine/assess"
	"coilbook/engine/session"
	"coilbook/specs"
)

const assessUsage = `usage: coilbook assess [-table] [-profile ID] FILE
Judges the readings of a session file ("-" reads standard input) and prints the
verdicts as JSON, or as a table for people with -table.
`

// assessFile runs the command and returns its exit code: 0, 1 when nothing
// could be printed, 2 for bad input.
func assessFile(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("assess", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.Usage = func() { fmt.Fprint(stderr, assessUsage) }
	table := flags.Bool("table", false, "print a table for people")
	profile := flags.String("profile", "", "id of the spec profile, instead of the session's own")
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return 0
	case err != nil:
		return 2
	case flags.NArg() != 1:
		fmt.Fprint(stderr, assessUsage)
		return 2
	}
	name := flags.Arg(0)
	bench, err := benchFrom(name, *profile, stdin)
	if err != nil {
		fmt.Fprintf(stderr, "coilbook: %s: %v\n", name, err)
		return 2
	}
	write := reportWithDiagnosis
	if *table {
		write = words.ReportTable
	}
	out, err := write(bench)
	if err == nil {
		_, err = stdout.Write(out)
	}
	if err != nil {
		fmt.Fprintf(stderr, "coilbook: %s: %v\n", name, err)
		return 1
	}
	return 0
}

func benchFrom(name, profile string, stdin io.Reader) (assess.Bench, error) {
	profiles, err := specs.Bundled()
	if err != nil {
		return assess.Bench{}, err
	}
	b, err := readNamed(name, stdin)
	if err != nil {
		return assess.Bench{}, err
	}
	s, err := session.Decode(b)
	if err != nil {
		return assess.Bench{}, err
	}
	st := s.Fold()
	field := "-profile"
	if profile == "" {
		field, profile = "setup.profile", st.Setup.Profile
	}
	if profile != "" {
		known := false
		for _, p := range profiles {
			known = known || p.ID == profile
		}
		if !known {
			return assess.Bench{}, fmt.Errorf("%s: %q is not bundled; use any-small-machine, three-phase-charge or ac-fed-ignition", field, profile)
		}
		st.Setup.Profile = profile
	}
	return assess.Open(st, profiles), nil
}

func readNamed(name string, stdin io.Reader) ([]byte, error) {
	if name == "-" {
		return io.ReadAll(stdin)
	}
	b, err := os.ReadFile(name)
	var path *os.PathError
	if errors.As(err, &path) {
		return nil, fmt.Errorf("cannot be read: %w; check the name", path.Err)
	}
	return b, err
}
