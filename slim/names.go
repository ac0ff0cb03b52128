package slim

import (
	"bytes"
	"encoding/binary"
	"slices"
	"strings"
)

// Names that stay: our own, for the sake of traces, and two that the runtime
// compares with (runtime/stkframe.go).
var (
	ours   = []string{"coilbook/", "main."}
	needed = []string{"reflect.makeFuncStub", "reflect.methodValueCall"}
)

// Two names stand for the others: the runtime tells its own functions by the
// package, and takes the name of a method that was called through nil apart
// (panicwrap in runtime/error.go).
const (
	ofRuntime = "runtime."
	ofMethod  = "other.(*type).method"
)

// dropNames clears the names of functions that are not ours.
func (t *table) dropNames() error {
	others := map[uint64]string{} // what stands in for an entry's name, by its number
	for i := range t.header[nFunctions] {
		e, err := t.entry(i)
		if err != nil {
			return err
		}
		if name := nameAt(t.names(), word(e.fixed, atNameOff)); !staysNamed(name) {
			others[i] = standIn(name)
		}
	}
	places, err := t.clearNames()
	if err != nil {
		return err
	}
	for i, other := range others {
		e, err := t.entry(i)
		if err != nil {
			return err
		}
		binary.LittleEndian.PutUint32(e.fixed[atNameOff:], places[other])
	}
	return nil
}

func (t *table) names() []byte { return t.memory[t.header[nameTable]:t.header[unitTable]] }

func nameAt(names []byte, at uint32) string {
	name, _, _ := bytes.Cut(names[at:], []byte{0})
	return string(name)
}

func staysNamed(name string) bool {
	return slices.Contains(needed, name) ||
		slices.ContainsFunc(ours, func(start string) bool { return strings.HasPrefix(name, start) })
}

func standIn(name string) string {
	switch {
	case strings.HasPrefix(name, ofRuntime):
		return ofRuntime
	case strings.Contains(name, ".(*") && strings.Contains(name, ")."):
		return ofMethod
	}
	return ""
}

// clearNames clears the names that do not stay, writes the two that stand in
// for them into the place of others, and tells where each is. No name is at 0.
func (t *table) clearNames() (map[string]uint32, error) {
	names := t.names()
	for at := 0; at < len(names); {
		name := nameAt(names, uint32(at))
		if !staysNamed(name) {
			clear(names[at : at+len(name)])
		}
		at += len(name) + 1
	}
	both := ofRuntime + "\x00" + ofMethod + "\x00"
	hole := bytes.Index(names, make([]byte, 1+len(both)))
	if hole < 0 {
		return nil, ErrLayout
	}
	at := hole + 1 // behind the end of a name, or of none
	copy(names[at:], both)
	return map[string]uint32{ofRuntime: uint32(at), ofMethod: uint32(at + len(ofRuntime) + 1)}, nil
}
