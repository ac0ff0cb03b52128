//go:build !js

package main

import (
	"io/fs"
	"net/http"
	"strconv"
	"strings"
)

// encoded is the form of a file that the request takes best, the plain one with
// an empty coding when there is no other. The bool is false when there is no
// such file.
func encoded(r *http.Request, site fs.FS, name string) (content []byte, c coding, ok bool) {
	plain, err := fs.ReadFile(site, name)
	if err != nil {
		return nil, coding{}, false
	}
	content, best := plain, 0.0
	for _, one := range codings {
		q := quality(r.Header.Get("Accept-Encoding"), one.name)
		if q <= best {
			continue
		}
		if small, err := fs.ReadFile(site, name+one.suffix); err == nil {
			content, c, best = small, one, q
		}
	}
	return content, c, true
}

// quality is how much a request wants a coding, from 0 (not at all) to 1 (RFC
// 9110, section 12.5.3). A number that cannot be read counts as 0.
func quality(accept, name string) float64 {
	any := 0.0
	for item := range strings.SplitSeq(accept, ",") {
		token, parameter, _ := strings.Cut(item, ";")
		token = strings.ToLower(strings.TrimSpace(token))
		switch {
		case token == name || token == "x-"+name:
			return weight(parameter)
		case token == "*":
			any = weight(parameter)
		}
	}
	return any
}

func weight(parameter string) float64 {
	name, text, given := strings.Cut(strings.ToLower(strings.TrimSpace(parameter)), "=")
	if !given || strings.TrimSpace(name) != "q" {
		return 1
	}
	q, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil || !(q >= 0 && q <= 1) {
		return 0
	}
	return q
}
