package diagnose

// Progress is how many cases are populated, and of how many: what a screen shows
// while Grow is under way.
func (m *Model) Progress() (ready, of int) { return m.ready, len(m.cases) }
