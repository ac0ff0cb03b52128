package meter

import (
	"encoding"
	"fmt"
	"slices"
	"strings"
)

// detectorIDs stand in stored files for ever.
var detectorIDs = [...]string{"average-ac", "average-dc", "half-wave", "true-rms"}

var (
	_ encoding.TextMarshaler   = AverageAC
	_ encoding.TextUnmarshaler = new(Detector)
)

// MarshalText writes the detector as files name it.
func (d Detector) MarshalText() ([]byte, error) {
	if d < 0 || int(d) >= len(detectorIDs) {
		return nil, unknownDetector(d.String())
	}
	return []byte(detectorIDs[d]), nil
}

// UnmarshalText reads the name back. A name that is not known is refused with a
// *FieldError and not left out: fewer detectors would claim to know more.
func (d *Detector) UnmarshalText(name []byte) error {
	i := slices.Index(detectorIDs[:], string(name))
	if i < 0 {
		return unknownDetector(string(name))
	}
	*d = Detector(i)
	return nil
}

func unknownDetector(name string) error {
	return &FieldError{"detectors", fmt.Sprintf("name %q, which is not known", name), "use " + strings.Join(detectorIDs[:], ", ")}
}
