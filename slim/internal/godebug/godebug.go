// Package godebug takes the place of the standard internal/godebug in the
// browser build only. A page has no environment, so every setting is as if it
// had never been made; the standard one also brings counters of the runtime.
package godebug

// Setting is one that was never made.
type Setting struct{ name string }

// New names a setting.
func New(name string) *Setting { return &Setting{name} }

// Name is the name without the mark of settings that are not documented.
func (s *Setting) Name() string {
	if s.Undocumented() {
		return s.name[1:]
	}
	return s.name
}

// Undocumented tells whether the name has that mark.
func (s *Setting) Undocumented() bool { return s.name != "" && s.name[0] == '#' }

// String is the name and the value.
func (s *Setting) String() string { return s.Name() + "=" }

// IncNonDefault counts nothing.
func (*Setting) IncNonDefault() {}

// Value is empty.
func (*Setting) Value() string { return "" }
