package fault

import (
	"errors"
	"fmt"
	"slices"
)

// Catalogue is the faults, and what is supposed of all that is not one of them. All of
// it is data that a user can read and change.
type Catalogue struct {
	Faults   []Fault              `json:"faults"`
	Unlisted map[Symptom]Unlisted `json:"unlisted,omitempty"` // a symptom that is left out: the list is whole
	Slips    Slips                `json:"slips"`
}

// Unlisted is what is supposed of a fault that is none of the list, for a complaint.
type Unlisted struct {
	Share   float64 `json:"share"`   // of the machines with the complaint that have such a fault, from 0 to less than 1
	Unseen  float64 `json:"unseen"`  // of those, how often no check of the list shows it
	Because string  `json:"because"` // why that is thought
}

// Slips is how often a reading is a mistake of any kind: a digit, a unit, a probe that
// did not touch.
type Slips struct {
	Share   float64 `json:"share"` // of readings, above 0 and up to a half
	Because string  `json:"because"`
}

// What catalogues before version 3 were weighed with: they do not say.
const (
	unsaidUnlisted = 0.04
	unsaidSlips    = 0.015
	unsaid         = "The catalogue does not say; what earlier ones were weighed with."
)

// priors holds them to what they may be, and fills in what earlier versions do not say.
func (c *Catalogue) priors(version int) error {
	if version < 3 {
		if c.Unlisted != nil || c.Slips != (Slips{}) {
			return errors.New("unlisted and slips are not known to versions before 3: use version 3")
		}
		c.Unlisted = map[Symptom]Unlisted{}
		for _, s := range Symptoms() {
			c.Unlisted[s] = Unlisted{Share: unsaidUnlisted, Because: unsaid}
		}
		c.Slips = Slips{unsaidSlips, unsaid}
	}
	for s, u := range c.Unlisted {
		switch {
		case !slices.Contains(Symptoms(), s):
			return fmt.Errorf("unlisted: symptom %q is not known", s)
		case !(u.Share >= 0 && u.Share < 1):
			return fmt.Errorf("unlisted: share %v for %s is not from 0 to less than 1", u.Share, s)
		case !(u.Unseen >= 0 && u.Unseen <= 1):
			return fmt.Errorf("unlisted: unseen %v for %s is not from 0 to 1", u.Unseen, s)
		case u.Because == "":
			return fmt.Errorf("unlisted: because is empty for %s: say why that is thought", s)
		}
	}
	switch {
	case c.Slips == (Slips{}):
		return errors.New("slips are missing: say how often a reading is a mistake")
	case !(c.Slips.Share > 0 && c.Slips.Share <= 0.5):
		return fmt.Errorf("slips: share %v is not above 0 and up to 0.5", c.Slips.Share)
	case c.Slips.Because == "":
		return errors.New("slips: because is empty: say why that is thought")
	}
	return nil
}
