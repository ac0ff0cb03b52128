package tongue

import (
	"fmt"
	"strconv"
	"strings"
)

// catalogue holds translations by their English, with context before it or the
// number of a form behind it.
type catalogue map[string]string

// What joins a key to its context (as compiled gettext catalogues do) and to a form.
const (
	inContext = "\x04"
	inForm    = "\x00"
)

func (c catalogue) of(english string) string {
	if s, ok := c[english]; ok {
		return s
	}
	return english
}

// readPO reads a PO file as the GNU gettext manual describes it (chapter 3). Entries
// that are not translated, or marked fuzzy, are left out, as gettext does.
func readPO(text string) (catalogue, error) {
	c := catalogue{}
	list, err := entries(text)
	for _, e := range list {
		e.addTo(c)
	}
	return c, err
}

// entry is one sentence of a PO file.
type entry struct {
	context, id, plural string
	forms               [4]string
	fuzzy               bool
	comments            []string
}

func entries(text string) (list []entry, err error) {
	var e entry
	into := ""
	for i, line := range strings.Split(text+"\n", "\n") {
		line = strings.TrimSpace(line)
		switch {
		case line == "":
			if into != "" {
				list = append(list, e)
			}
			e, into = entry{}, ""
		case line[0] == '#':
			e.comment(line)
		case line[0] == '"' && into != "":
			s, err := strconv.Unquote(line)
			if err != nil {
				return nil, fmt.Errorf("line %d: %w", i+1, err)
			}
			e.append(into, s)
		default:
			word, quoted, _ := strings.Cut(line, " ")
			s, err := strconv.Unquote(strings.TrimSpace(quoted))
			if err != nil || !e.append(word, s) {
				return nil, fmt.Errorf("line %d: %q is no line of a PO file", i+1, line)
			}
			into = word
		}
	}
	return list, nil
}

func (e *entry) comment(line string) {
	switch {
	case strings.HasPrefix(line, "#,"):
		e.fuzzy = e.fuzzy || strings.Contains(line, "fuzzy")
	case strings.HasPrefix(line, "# "):
		e.comments = append(e.comments, line)
	}
}

// append adds to a part of the entry; ok is false where there is no such part.
func (e *entry) append(word, s string) (ok bool) {
	switch word {
	case "msgctxt":
		e.context += s
	case "msgid":
		e.id += s
	case "msgid_plural":
		e.plural += s
	case "msgstr", "msgstr[0]":
		e.forms[0] += s
	case "msgstr[1]", "msgstr[2]", "msgstr[3]":
		e.forms[word[7]-'0'] += s
	default:
		return false
	}
	return true
}

// key is what the entry's form is looked up by.
func (e *entry) key(form int) string {
	key := e.id
	if e.context != "" {
		key = e.context + inContext + key
	}
	if e.plural != "" {
		key += inForm + strconv.Itoa(form)
	}
	return key
}

func (e *entry) addTo(c catalogue) {
	if e.id == "" || e.fuzzy {
		return
	}
	for i, s := range e.forms {
		if s != "" {
			c[e.key(i)] = s
		}
	}
}
