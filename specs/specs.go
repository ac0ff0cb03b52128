// Package specs holds what is bundled with the program as data: spec profiles
// of generic families with wide common-practice limits, and the JSON Schemas of
// the file formats.
package specs

import (
	"embed"
	"fmt"

	"coilbook/engine/spec"
)

//go:embed profiles/*.json
var profiles embed.FS

//go:embed schema/*.schema.json
var schemas embed.FS

// Schema gives the JSON Schema of a format: "session", "profile", "report",
// "converse" or "faults".
func Schema(format string) ([]byte, error) {
	b, err := schemas.ReadFile("schema/" + format + ".schema.json")
	if err != nil {
		return nil, fmt.Errorf("schema of a %s: %w", format, err)
	}
	return b, nil
}

// DefaultID is the profile used until the user chooses another.
const DefaultID = "any-small-machine"

// order is the order profiles are offered in, the widest first.
var order = []string{DefaultID, "three-phase-charge", "ac-fed-ignition"}

// Bundled reads the bundled profiles. An error means that the program was
// built with a broken file; the tests read them all.
func Bundled() ([]spec.Profile, error) {
	out := make([]spec.Profile, 0, len(order))
	for _, id := range order {
		b, err := profiles.ReadFile("profiles/" + id + ".json")
		if err != nil {
			return nil, fmt.Errorf("bundled spec profile: %w", err)
		}
		p, err := spec.DecodeProfile(b)
		if err != nil {
			return nil, err
		}
		out = append(out, p)
	}
	return out, nil
}
