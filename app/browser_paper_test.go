//go:build !js

package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
)

// papers are the usual sizes, in inches.
var papers = []struct {
	name          string
	width, height float64
}{{"A4", 8.27, 11.69}, {"Letter", 8.5, 11}}

// printed gives what the page would put on paper, leaving it in build/paper.
func (b *browser) printed(name string, width, height float64) string {
	b.t.Helper()
	got := call(b, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: width, PaperHeight: height})
	path := filepath.Join("..", "build", "paper", name+".pdf")
	err := os.MkdirAll(filepath.Dir(path), 0o755)
	if err == nil {
		err = os.WriteFile(path, got.Data, 0o644)
	}
	if err != nil {
		b.t.Fatal("printing: ", err)
	}
	return path
}

// pagesOf are the words on each page, without spaces; ligatures are taken apart.
func pagesOf(t *testing.T, pdf string) []string {
	t.Helper()
	out, err := exec.Command("pdftotext", "-raw", pdf, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	pages := strings.Split(strings.TrimSuffix(string(out), "\f"), "\f")
	for i, p := range pages {
		pages[i] = squeezed(p)
	}
	return pages
}

func squeezed(text string) string {
	text = strings.NewReplacer("ﬁ", "fi", "ﬂ", "fl", "ﬀ", "ff", "ﬃ", "ffi", "ﬄ", "ffl").Replace(text)
	return regexp.MustCompile(`\s+`).ReplaceAllString(text, "")
}

// pieces are what must not be cut: the words of each verdict, row and plot, line by line.
const pieces = `[...document.querySelectorAll(".verdicts .verdict, .rows .row, .plot, .parts .part")].filter(e => e.checkVisibility())
	.map(e => [...e.querySelectorAll("p, strong, .row-name > *, .chip span")].filter(x => x.checkVisibility() && !x.closest("details:not([open])") && !x.querySelector("p, strong")).map(x => x.textContent.trim()).filter(Boolean))`

// On A4 and on Letter: every verdict with its word on one page, no row cut, pages
// numbered, nothing on it that only a finger can use.
func TestOnPaper(t *testing.T) {
	if _, err := exec.LookPath("pdftotext"); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("pdftotext is not there: install poppler-utils")
		}
		t.Skip("printing not tried: install poppler-utils for pdftotext")
	}
	b, all := atGallery(t)
	for _, scene := range []struct {
		name   string
		pages  int // at most
		pieces int // at least
		has    []string
	}{
		{"result-bad", 3, 12, []string{"Barn moped", "out of spec", "in spec", "cannot tell", "4 May 2026"}},
		{"result-output", 3, 5, []string{"Yard quad", "Battery volts over engine speed"}},
		{"sheet-done", 2, 12, []string{"Barn moped", "Pickup resistance", "4 May 2026"}},
		{"finding-winding", 3, 3, []string{"Winding, won't charge", "The finding", "4 May 2026"}},
	} {
		b.show(all, scene.name)
		call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"}) // some rows stay off the paper
		whole := evaluate[[][]string](b, pieces)
		call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{})
		if len(whole) < scene.pieces {
			t.Errorf("%s has %d pieces for paper, at least %d", scene.name, len(whole), scene.pieces)
		}
		for _, paper := range papers {
			b.look("dark") // whatever the screen shows
			pdf := b.printed(scene.name+"-"+paper.name, paper.width, paper.height)
			pages := pagesOf(t, pdf)
			if n := pagesIn(t, pdf); n != len(pages) || n > scene.pages {
				t.Errorf("%s on %s has %d pages, at most %d (%d with words)", scene.name, paper.name, n, scene.pages, len(pages))
			}
			together := strings.Join(pages, "")
			for _, text := range scene.has {
				if !strings.Contains(together, squeezed(text)) {
					t.Errorf("%s on %s lacks %q", scene.name, paper.name, text)
				}
			}
			for i, p := range pages {
				if number := squeezed(strings.Join([]string{digits(i + 1), "/", digits(len(pages))}, " ")); !strings.Contains(p, number) {
					t.Errorf("%s on %s: page %d is not numbered %s", scene.name, paper.name, i+1, number)
				}
			}
			for _, gone := range []string{"Save as file", "Finish", "Find the fault", "As a table", "why ▸", "not done"} {
				if strings.Contains(together, squeezed(gone)) {
					t.Errorf("%s on %s has %q", scene.name, paper.name, gone)
				}
			}
			for _, piece := range whole {
				if !onOnePage(pages, piece) {
					t.Errorf("%s on %s: cut through, or not there: %q", scene.name, paper.name, piece)
				}
			}
		}
	}
}

func digits(n int) string { return string(rune('0' + n)) }

func onOnePage(pages, piece []string) bool {
	for _, p := range pages {
		all := true
		for _, line := range piece {
			all = all && strings.Contains(p, squeezed(line))
		}
		if all {
			return true
		}
	}
	return false
}

// pagesIn counts the pages of a PDF by its own objects.
func pagesIn(t *testing.T, path string) int {
	t.Helper()
	pdf, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return len(regexp.MustCompile(`/Type\s*/Page\b`).FindAll(bytes.ReplaceAll(pdf, []byte("/Pages"), nil), -1))
}
