package slim

import (
	"crypto/sha1"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	small "coilbook/slim/crypto/sha1"
	"coilbook/slim/net/netip"
	plain "coilbook/slim/regexp"
)

func TestSumsAreThoseOfTheStandardLibrary(t *testing.T) {
	for n := range 200 {
		text := []byte(strings.Repeat("coil ", 40)[:n])
		assert.Equal(t, sha1.Sum(text), small.Sum(text), n)
	}
	h := small.New()
	_, _ = h.Write([]byte("co"))
	_, _ = h.Write([]byte("il"))
	want := sha1.Sum([]byte("coil"))
	assert.Equal(t, append([]byte("x"), want[:]...), h.Sum([]byte("x")))
}

func TestPatternsMatchAsInTheStandardLibrary(t *testing.T) {
	for _, pattern := range []string{"^/.*$", "^.*$", "^/s/.*$"} {
		for _, text := range []string{"", "/", "/s/x", "x/", "/s", "/a\nb"} {
			assert.Equal(t, regexp.MustCompile(pattern).MatchString(text), plain.MustCompile(pattern).MatchString(text), pattern+" "+text)
		}
	}
	for _, pattern := range []string{"/.*$", "^/.*", "^/[a-z].*$", `^/\d.*$`} {
		assert.Panics(t, func() { plain.MustCompile(pattern) }, pattern)
	}
}

func TestAddresses(t *testing.T) {
	for text, four := range map[string]bool{"::1": false, "fe80::1%eth0": false, "127.0.0.1": true} {
		a, err := netip.ParseAddr(text)
		require.NoError(t, err)
		assert.Equal(t, four, a.Is4(), text)
	}
	_, err := netip.ParseAddr("host")
	assert.Error(t, err)
}

func TestAnotherStandardLibraryIsTold(t *testing.T) {
	_, err := Prepare(t.TempDir(), t.TempDir())
	assert.ErrorIs(t, err, ErrGoroot)
}

func TestWhatIsNoProgramIsTold(t *testing.T) {
	for _, text := range []string{"", "text", "\x00asm\x01\x00\x00\x00", "\x00asm\x01\x00\x00\x00\x0b\x7f\x01"} {
		assert.ErrorIs(t, DropLines([]byte(text)), errWasm)
	}
	// One segment of two bytes at address 16: a program without a table.
	assert.ErrorIs(t, DropLines([]byte("\x00asm\x01\x00\x00\x00\x0b\x08\x01\x00\x41\x10\x0b\x02ab")), ErrLayout)
}
