// Package netip takes the place of the standard net/netip in the browser build
// only, where net/url asks it whether a host in brackets is an address of
// version 6. The browser has read the address of the page before.
package netip

import (
	"errors"
	"strings"
)

// Addr is an address as it was written.
type Addr struct{ text string }

var errAddr = errors.New("not an IP address")

// ParseAddr takes what is made of the signs of an address.
func ParseAddr(s string) (Addr, error) {
	plain, _, _ := strings.Cut(s, "%") // what follows names a network card
	if plain == "" || strings.Trim(strings.ToLower(plain), "0123456789abcdef:.") != "" {
		return Addr{}, errAddr
	}
	return Addr{plain}, nil
}

// Is4 tells whether the address is one of version 4.
func (a Addr) Is4() bool { return !strings.Contains(a.text, ":") }
