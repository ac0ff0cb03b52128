//go:build !js

package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
)

const converseUsage = `usage: coilbook converse [FILE]
Finds a fault in a dialogue of JSON lines. The first line says what the machine
does, how it is built and what can be got at; each line of the program then asks
for one check, each further line answers it, and the last line of the program is
the finding. Reads standard input, or the lines of FILE. The lines are described
by specs/schema/converse.schema.json.
`

// converse runs the command and returns its exit code: 0 with a finding, 1 when
// it could not be printed, 2 for a first line that cannot be used.
func converse(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	flags := flag.NewFlagSet("converse", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.Usage = func() { fmt.Fprint(stderr, converseUsage) }
	switch err := flags.Parse(args); {
	case errors.Is(err, flag.ErrHelp):
		return exitDone
	case err != nil:
		return exitUsage
	case flags.NArg() > 1:
		fmt.Fprint(stderr, converseUsage)
		return exitUsage
	}
	name := "-"
	if flags.NArg() == 1 {
		name = flags.Arg(0)
	}
	if name != "-" {
		file, err := os.Open(name)
		var path *os.PathError
		if errors.As(err, &path) {
			fmt.Fprintf(stderr, "coilbook: %s: cannot be read: %v; check the name\n", name, path.Err)
			return exitUsage
		}
		defer file.Close()
		stdin = file
	}
	d := dialogue{in: bufio.NewReader(stdin), out: json.NewEncoder(stdout)}
	d.out.SetEscapeHTML(false)
	if err := d.begin(); err != nil {
		fmt.Fprintf(stderr, "coilbook: %s: %v\n", name, err)
		return exitUsage
	}
	if err := d.hold(); err != nil {
		fmt.Fprintf(stderr, "coilbook: %s: %v\n", name, err)
		return exitFailed
	}
	return exitDone
}

// dialogue is a conversation over two streams of lines.
type dialogue struct {
	in   *bufio.Reader
	out  *json.Encoder
	talk *diagnose.Conversation
	set  setting
}

// begin reads the first line and prepares what is asked from.
func (d *dialogue) begin() error {
	line, err := nextLine(d.in)
	if errors.Is(err, io.EOF) {
		return errors.New("first line: is missing; send one with a symptom")
	}
	if err == nil {
		d.set, err = settingOf(line)
	}
	if err != nil {
		return ofFirst(err)
	}
	faults, err := fault.Bundled()
	if err != nil {
		return err
	}
	m := diagnose.New(d.set.question, faults).Ready()
	d.talk = diagnose.Begin(m, func(a check.Access) bool { return slices.Contains(d.set.cannot, a) })
	if d.set.leads == nil {
		return nil
	}
	return ofFirst(d.talk.Leads(*d.set.leads))
}

// ofFirst says that a problem is the first line's.
func ofFirst(err error) error {
	var whole *lineError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &whole) && whole.field == "line":
		return fmt.Errorf("first line: %s; %s", whole.reason, whole.wayOut)
	}
	return fmt.Errorf("first line: %w", err)
}

// badLines is how many lines that cannot be used are taken for one check.
const badLines = 3

// hold asks until the finding stands or the other side has no more to say.
func (d *dialogue) hold() error {
	bads := 0
	for {
		next, more := d.talk.Ask()
		if !more {
			return d.conclude()
		}
		if err := d.out.Encode(askLine{asking(d.talk, next, d.set.question.Meter), suspectsOf(d.talk.Suspects().Faults)}); err != nil {
			return err
		}
		line, err := nextLine(d.in)
		var bad *lineError
		switch {
		case errors.Is(err, io.EOF):
			return d.conclude()
		case err != nil && !errors.As(err, &bad):
			return errors.Join(d.conclude(), err)
		case err == nil:
			err = d.answer(next, line)
		}
		if err == nil {
			bads = 0
			continue
		}
		problem := err.Error()
		if bads++; bads >= badLines {
			bads, problem = 0, problem+"; the check is left out now"
			if err := d.talk.Refuse(next.Check.ID); err != nil {
				return err
			}
		}
		if err := d.out.Encode(problemLine{problem}); err != nil {
			return err
		}
	}
}

// answer takes one line; it is for the check that was asked for, unless it names
// another.
func (d *dialogue) answer(next diagnose.Choice, line []byte) error {
	a, err := answerOf(line)
	if err != nil {
		return err
	}
	asked := next.Check.ID
	if a.Check != nil {
		asked = *a.Check
	}
	if next.Again && asked == next.Check.ID {
		d.talk.Beside(asked)
	}
	switch {
	case a.Reading != nil:
		return d.talk.Answer(asked, *a.Reading, a.Unit)
	case a.Number != nil:
		return d.talk.Number(asked, *a.Number)
	case a.Yes != nil:
		return d.talk.See(asked, *a.Yes)
	}
	return d.talk.Refuse(asked)
}

func (d *dialogue) conclude() error { return d.out.Encode(findingLine{findingOf(d.talk)}) }
