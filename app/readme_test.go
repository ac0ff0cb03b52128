//go:build !js

package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// commandsIn gives the lines of the shell blocks of a Markdown file, without
// their comments.
func commandsIn(t *testing.T, name string) []string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", name))
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, block := range regexp.MustCompile("(?s)```sh\n(.*?)```").FindAllStringSubmatch(string(text), -1) {
		for _, line := range strings.Split(strings.TrimSpace(block[1]), "\n") {
			command, _, _ := strings.Cut(line, "#")
			out = append(out, strings.TrimSpace(command))
		}
	}
	return out
}

func TestTheReadmesCommandsWork(t *testing.T) {
	makefile, err := os.ReadFile(filepath.Join("..", "Makefile"))
	if err != nil {
		t.Fatal(err)
	}
	commands := commandsIn(t, "README.md")
	if len(commands) < 6 {
		t.Fatalf("only %d commands found", len(commands))
	}
	for _, command := range commands {
		words := strings.Fields(command)
		switch words[0] {
		case "make":
			if !regexp.MustCompile(`(?m)^` + words[1] + `:`).Match(makefile) {
				t.Errorf("%q: the Makefile has no such target", command)
			}
		case "build/coilbook":
			runHere(t, words[1:])
		default:
			t.Errorf("%q: the test does not know how to try it", command)
		}
	}
}

// runHere runs our own command line as from the top of the repository.
func runHere(t *testing.T, args []string) {
	t.Helper()
	t.Chdir("..")
	var out, problems bytes.Buffer
	if code := run(args, strings.NewReader(""), &out, &problems); code != 0 || out.Len() == 0 {
		t.Errorf("%v ends with %d: %s", args, code, problems.String())
	}
	t.Chdir("app")
}

func TestDocumentsLinkToWhatIsThere(t *testing.T) {
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		text, err := os.ReadFile(filepath.Join("..", name))
		if err != nil {
			t.Fatal(err)
		}
		for _, link := range regexp.MustCompile(`\]\(([^)]+)\)`).FindAllStringSubmatch(string(text), -1) {
			if _, err := os.Stat(filepath.Join("..", link[1])); err != nil {
				t.Errorf("%s links to %s, which is not there", name, link[1])
			}
		}
	}
}
