package slim

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestGapsLeadToEachFunction(t *testing.T) {
	names := make([]string, 2000)
	for i := range names {
		names[i] = "f" + strings.Repeat("x", i%7)
	}
	names[0], names[254], names[255], names[256], names[1999] = "a", "b", "c", "d", "e"
	at := 0
	var reached []int
	for _, g := range gaps(names, []string{"a", "b", "c", "d", "e", "gone"}) { // as web/loader.js reads them
		at += int(g)
		if g != longGap {
			reached = append(reached, at-firstFunction)
		}
	}
	assert.Equal(t, []int{0, 254, 255, 256, 1999}, reached)
}

func TestTheTableAndTheStackGetNames(t *testing.T) {
	exports := "\x07\x05\x01\x01f\x00\x00" // one function
	s := split{before: []byte("\x00asm\x01\x00\x00\x00" + exports + "\x0a\x02ab")}
	require.NoError(t, s.export())
	assert.Equal(t, "\x00asm\x01\x00\x00\x00\x07\x19\x03\x01f\x00\x00\x09functions\x01\x00\x05stack\x03\x00\x0a\x02ab", string(s.before))
	s.before = s.before[:8]
	assert.ErrorIs(t, s.export(), errWasm)
}

// The first list is whole and the second adds to it.
func TestTheListsNameFunctions(t *testing.T) {
	for _, list := range []string{warmStart, warmLater} {
		assert.Greater(t, strings.Count(list, "\n"), 1000)
		assert.Contains(t, list, "coilbook/app/screen.")
	}
	assert.Contains(t, warmStart, "main.main\n")
	assert.Contains(t, warmLater, "coilbook/engine/diagnose.")
}
