package device

// Settings are what the user chose for this phone. They are no part of any
// record.
type Settings struct {
	Large       bool // type and targets larger
	Aloud       bool // each new check and verdict is read aloud by itself
	Vibrate     bool // a verdict is felt
	Awake       bool // the screen stays on during a session
	Thousandths bool // gaps in thousandths of an inch, not in mm
	Fahrenheit  bool // temperatures in °F, not in °C
}

// DefaultSettings are in force until something is chosen.
func DefaultSettings() Settings { return Settings{Awake: true} }

// switches are the names that settings are kept under. The page reads "large"
// by itself before it is painted (web/theme.js).
func (s *Settings) switches() map[string]*bool {
	return map[string]*bool{
		"large": &s.Large, "aloud": &s.Aloud, "vibrate": &s.Vibrate, "awake": &s.Awake,
		"thousandths": &s.Thousandths, "fahrenheit": &s.Fahrenheit,
	}
}

const on, off = "on", "off"

// KeptSettings are those kept on the device. What is missing, or is neither on
// nor off, is as it is by default.
func KeptSettings() Settings {
	s := DefaultSettings()
	for name, value := range s.switches() {
		switch Kept(name) {
		case on:
			*value = true
		case off:
			*value = false
		}
	}
	return s
}

// KeepSettings keeps all of them and puts those that concern the page as a whole
// in force at once. kept is false where the browser keeps nothing: then they hold
// until the page closes.
func KeepSettings(s Settings) (kept bool) {
	kept = true
	for name, value := range s.switches() {
		text := off
		if *value {
			text = on
		}
		kept = Keep(name, text) && kept
	}
	showLarge(s.Large)
	return kept
}
