package practice

import (
	"fmt"
	"strings"
)

// A code is six characters: level and seed as five of Crockford's base 32
// (published: no I, L, O, U; I and L read as 1, O as 0), and a sixth that checks
// them.
const (
	alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
	digits   = 5
	// Seeds is how many benches a level has.
	Seeds = 1 << (5*digits - 2)
)

// CodeError says why a code opens no bench.
type CodeError struct{ Code, Reason, WayOut string }

func (e *CodeError) Error() string {
	return fmt.Sprintf("code %q %s: %s", e.Code, e.Reason, e.WayOut)
}

// Code is the bench's code, e.g. "0K7-QPM".
func (b Bench) Code() string {
	n := uint32(b.Level)*Seeds + b.Seed
	var out [digits + 1]byte
	for i := digits - 1; i >= 0; i-- {
		out[i] = alphabet[n&31]
		n >>= 5
	}
	out[digits] = alphabet[sign(string(out[:digits]))]
	return string(out[:3]) + "-" + string(out[3:])
}

// sign weighs each character by an odd number of its place: one wrong character
// is always noticed, two neighbours that changed places unless they stand 16
// apart in the alphabet.
func sign(text string) int {
	sum := 0
	for i := range len(text) {
		sum += (2*i + 1) * strings.IndexByte(alphabet, text[i])
	}
	return sum % len(alphabet)
}

// FromCode opens the bench of a code, however it is spaced; a *CodeError says what
// is wrong with it.
func FromCode(code string) (Bench, error) { return FromCodeIn(code, func() {}) }

// FromCodeIn is FromCode for a screen: pause is called now and then in its simulations.
func FromCodeIn(code string, pause func()) (Bench, error) {
	b, err := named(code)
	if err != nil {
		return Bench{}, err
	}
	return opened(b.Level, b.Seed, pause), nil
}

// Spelled is a code as Code spells it; it simulates nothing. A *CodeError says what is
// wrong with it.
func Spelled(code string) (string, error) {
	b, err := named(code)
	if err != nil {
		return "", err
	}
	return b.Code(), nil
}

// CodeOf is the code of a level and a seed; it simulates nothing.
func CodeOf(level Level, seed uint32) string {
	b, _ := begun(level, seed)
	return b.Code()
}

// named is the bench of a code before anything but its build is drawn.
func named(code string) (Bench, error) {
	plain := strings.NewReplacer("-", "", " ", "", "I", "1", "L", "1", "O", "0").Replace(strings.ToUpper(strings.TrimSpace(code)))
	if len(plain) != digits+1 {
		return Bench{}, &CodeError{code, "has not six characters", "type it as it was shared, such as 0K7-QPM"}
	}
	n := uint32(0)
	for i := range digits {
		v := strings.IndexByte(alphabet, plain[i])
		if v < 0 {
			return Bench{}, &CodeError{code, fmt.Sprintf("holds %q, which no code has", plain[i]), "look at that character again"}
		}
		n = n<<5 | uint32(v)
	}
	level := Level(n / Seeds)
	if strings.IndexByte(alphabet, plain[digits]) != sign(plain[:digits]) || level > Sly {
		return Bench{}, &CodeError{code, "does not add up", "one of its characters is wrong: look at it again"}
	}
	b, _ := begun(level, n%Seeds)
	return b, nil
}
