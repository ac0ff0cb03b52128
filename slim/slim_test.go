package slim

import (
	"bytes"
	"crypto/sha1"
	"regexp"
	"slices"
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
		_, err := Finish([]byte(text))
		assert.ErrorIs(t, err, errWasm)
	}
	// One segment of two bytes at address 16: a program without a table.
	_, err := Finish([]byte("\x00asm\x01\x00\x00\x00\x0b\x08\x01\x00\x41\x10\x0b\x02ab"))
	assert.ErrorIs(t, err, ErrLayout)
}

// Only a long run of zeros parts the memory; its ends are left out anyway.
func TestMemoryComesInFewPieces(t *testing.T) {
	long := make([]byte, worthAGap)
	for name, image := range map[string][]byte{
		"one piece":              []byte("ab\x00\x00cd"),
		"zeros at both ends":     []byte("\x00\x00ab\x00cd\x00"),
		"a gap worth leaving":    slices.Concat([]byte("ab"), long, []byte("cd")),
		"a gap not worth it":     slices.Concat([]byte("ab"), long[1:], []byte("cd")),
		"gaps at ends and inner": slices.Concat(long, []byte("a"), long, []byte("b"), long),
	} {
		parts := partsOf(image)
		assert.Equal(t, bytes.Count(image, long)+1-ends(image, long), len(parts), name)
		rebuilt := imageOf(parts)
		assert.Equal(t, image, append(rebuilt, make([]byte, len(image)-len(rebuilt))...), name)
	}
	assert.Empty(t, partsOf(make([]byte, 3)))
}

// ends counts the ends of an image that are long runs of zeros.
func ends(image, long []byte) (n int) {
	for _, end := range []bool{bytes.HasPrefix(image, long), bytes.HasSuffix(image, long)} {
		if end {
			n++
		}
	}
	return n
}

func TestSignedNumbers(t *testing.T) {
	for v, want := range map[int64]string{0: "\x00", 63: "\x3f", 64: "\xc0\x00", 128: "\x80\x01", 127456: "\xe0\xe3\x07", -1: "\x7f"} {
		assert.Equal(t, want, string(appendSigned(nil, v)), v)
	}
}

func TestNamesThatStay(t *testing.T) {
	for name, want := range map[string]string{
		"runtime.mallocgc": ofRuntime, "reflect.(*rtype).Method": ofMethod, "time.Now": "", "type:.eq.coilbook/app.x": "",
	} {
		assert.False(t, staysNamed(name), name)
		assert.Equal(t, want, standIn(name), name)
	}
	for _, name := range []string{"coilbook/app/desk.(*Desk).Start", "main.main", "reflect.makeFuncStub", "reflect.methodValueCall"} {
		assert.True(t, staysNamed(name), name)
	}
}
