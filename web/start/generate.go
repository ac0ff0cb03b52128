//go:build ignore

// Writes the start as it stands in the page before the program is there, once in each
// language that the program speaks: what the program draws for who has no records.
package main

import (
	"bytes"
	"cmp"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"html"
	"io"
	"log"
	"os"
	"os/exec"
	"slices"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/screen"
	"coilbook/app/words"
)

func main() {
	log.SetFlags(0)
	out := flag.String("out", "", "`file` to write; without it the start in the language of this run is printed")
	flag.Parse()
	if *out == "" {
		if err := tidy(os.Stdout, app.HTMLString(screen.FirstScreen())); err != nil {
			log.Fatal(err)
		}
		return
	}
	var page bytes.Buffer
	for _, l := range words.Languages() {
		page.Write(inLanguage(l.ID))
	}
	if err := os.WriteFile(*out, page.Bytes(), 0o644); err != nil {
		log.Fatal(err)
	}
}

// inLanguage runs this program in a language, which is fixed when a program starts.
func inLanguage(id string) []byte {
	self, err := os.Executable()
	if err != nil {
		log.Fatal(err)
	}
	run := exec.Command(self)
	run.Env = append(os.Environ(), "LC_ALL="+id)
	run.Stderr = os.Stderr
	text, err := run.Output()
	if err != nil {
		log.Fatal(err)
	}
	return bytes.Replace(text, []byte(`<div class="page"`), []byte(`<div lang="`+id+`" class="page"`), 1)
}

// tidy writes the framework's HTML with attributes in an order that stays, without the
// space between elements, which the program does not make either, and without ids: the
// page holds the start in each language.
func tidy(w io.Writer, text string) error {
	d := xml.NewDecoder(strings.NewReader(text))
	d.Strict = false
	for {
		token, err := d.RawToken()
		switch {
		case errors.Is(err, io.EOF):
			fmt.Fprintln(w)
			return nil
		case err != nil:
			return err
		}
		switch t := token.(type) {
		case xml.StartElement:
			fmt.Fprintf(w, "<%s%s>", t.Name.Local, attributes(t.Attr))
		case xml.EndElement:
			fmt.Fprintf(w, "</%s>", t.Name.Local)
		case xml.CharData:
			fmt.Fprint(w, html.EscapeString(strings.TrimSpace(string(t))))
		}
	}
}

func attributes(list []xml.Attr) string {
	slices.SortFunc(list, func(a, b xml.Attr) int { return cmp.Compare(a.Name.Local, b.Name.Local) })
	var out strings.Builder
	for _, a := range list {
		value := a.Value
		switch {
		case a.Name.Local == "id":
			continue
		case a.Name.Local == "href":
			value = "{{prefix}}" + strings.TrimPrefix(value, "/")
		case value == a.Name.Local: // the framework writes no value that is true
			value = "true"
		}
		fmt.Fprintf(&out, ` %s="%s"`, a.Name.Local, html.EscapeString(value))
	}
	return out.String()
}
