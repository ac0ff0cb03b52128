package assess

import "coilbook/engine/check"

// Beyond lists what was read or refused beyond the plan, for the suspects. A look
// has no verdict.
func (b Bench) Beyond() []Line {
	var out []Line
	plan := b.State.Plan()
	for _, k := range check.Whole(b.State.Setup.Build) {
		_, planned := check.Find(plan, k.ID)
		e, answered := b.State.Current[k.ID]
		switch {
		case planned || !answered:
		case k.Instrument == check.Eyes:
			out = append(out, Line{Check: k, Answer: e, Answered: true, Skipped: e.Skip != nil, Earlier: len(b.State.Earlier[k.ID])})
		default:
			out = append(out, b.Line(k))
		}
	}
	return out
}
