// Package regexp takes the place of the standard regexp in the browser build
// only, where the one use of it is the framework's choice of a route. It brings
// neither a parser of patterns nor the tables of all the world's letters.
package regexp

import (
	"fmt"
	"strings"
)

// Regexp is "^PLAIN.*$": everything that begins with a plain text.
type Regexp struct{ head string }

// MustCompile reads such a pattern, and panics on any other.
func MustCompile(pattern string) *Regexp {
	head, begins := strings.CutPrefix(pattern, "^")
	head, ends := strings.CutSuffix(head, ".*$")
	if !begins || !ends || strings.ContainsAny(head, `\.+*?()|[]{}^$`) {
		panic(fmt.Sprintf("regexp %q: this build for the browser reads patterns like \"^/.*$\" alone", pattern))
	}
	return &Regexp{head}
}

// MatchString tells whether a text matches. As in the standard library, "."
// stands for no new line.
func (r *Regexp) MatchString(s string) bool {
	return strings.HasPrefix(s, r.head) && !strings.Contains(s[len(r.head):], "\n")
}
