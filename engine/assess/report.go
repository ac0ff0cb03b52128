package assess

import (
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/spec"
	"coilbook/engine/winding"
)

// Report is a whole session judged.
type Report struct {
	Lines []Line
	// Derived are values worked out from several lines: ohms by drops,
	// temperatures by cold and hot.
	Derived  []Line
	Balance  *Balance       // nil where the build has no group of leads to compare
	Fine     *Balance       // the same by drops; nil where that method was not asked for
	Winding  *Winding       // nil where the charge winding has not three leads or not all readings
	Touch    *winding.Touch // nil where the winding reads open to the core, or not all is read
	Parts    []PartResult
	Untested []check.ID // checks of the plan without a reading that can be read
}

// PartResult is the worst that the readings say of one part.
type PartResult struct {
	Part    check.Part
	Outcome spec.Outcome
	Tested  int // readings with a verdict
	Of      int // checks that the plan has for the part
}

// Report judges every check of the plan.
func (b Bench) Report() Report {
	var r Report
	for _, c := range b.Plan {
		l := b.Line(c)
		r.Lines = append(r.Lines, l)
		if !l.Read() {
			r.Untested = append(r.Untested, c.ID)
		}
	}
	ohms, missing := b.voltAmp(r.Lines)
	r.Balance = b.coarse(r.Lines)
	r.Fine = b.fine(ohms, missing)
	r.Winding = b.winding(r, ohms)
	r.Touch = b.touch(r.Lines)
	r.Derived = append(ohms, b.heats(r.Lines)...)
	r.Parts = parts(r)
	return r
}

func parts(r Report) []PartResult {
	p := tally{index: map[check.Part]int{}}
	for _, l := range r.Lines {
		if l.Check.Feeds {
			continue
		}
		p.planned(l.Check.Part)
		if l.Judged() {
			p.tested(l.Check.Part, r.superseded(l.Verdict, l.Check))
		}
	}
	for _, l := range r.Derived {
		p.planned(l.Check.Part)
		p.tested(l.Check.Part, l.Verdict.Outcome)
	}
	for _, b := range []*Balance{r.Balance, r.Fine} {
		if b != nil && b.Missing == 0 {
			p.worsen(check.ChargeWinding, r.superseded(b.Verdict, check.Check{Measures: b.Verdict.Limit.Measurand}))
		}
	}
	return p.results()
}

// superseded is the outcome of a reading after a better method told the same:
// where the reading alone was too doubtful to tell, it no longer counts against
// the part. Digits that won't settle are a finding of their own.
func (r Report) superseded(v spec.Verdict, c check.Check) spec.Outcome {
	o := v.Outcome
	tooDoubtful := slices.Contains([]spec.Reason{spec.TooCoarse, spec.NearLimit, spec.BadLeads}, v.Reason)
	if o != spec.CannotTell || !tooDoubtful || slices.Contains(v.Remedies, spec.RetakeOne) {
		return o
	}
	if c.Measures == spec.ChargeBalance && r.Fine != nil && r.Fine.Missing == 0 {
		return spec.InSpec // the fine balance counts in its place
	}
	for _, d := range r.Derived {
		if d.Check.Measures == c.Measures && len(c.Leads) > 0 && slices.Equal(d.Check.Leads, c.Leads) {
			return spec.InSpec // likewise
		}
	}
	return o
}

// tally adds up parts in the order that they first come.
type tally struct {
	list  []PartResult
	index map[check.Part]int
}

func (t *tally) at(p check.Part) *PartResult {
	i, ok := t.index[p]
	if !ok {
		i = len(t.list)
		t.index[p] = i
		t.list = append(t.list, PartResult{Part: p, Outcome: spec.InSpec})
	}
	return &t.list[i]
}

func (t *tally) planned(p check.Part) { t.at(p).Of++ }

func (t *tally) tested(p check.Part, o spec.Outcome) {
	t.at(p).Tested++
	t.worsen(p, o)
}

func (t *tally) worsen(p check.Part, o spec.Outcome) {
	r := t.at(p)
	r.Outcome = worse(r.Outcome, o)
}

func (t *tally) results() []PartResult {
	for i := range t.list {
		if t.list[i].Tested == 0 {
			t.list[i].Outcome = spec.CannotTell
		}
	}
	return t.list
}

// worse orders the outcomes: a part is in spec only when all its readings are.
func worse(a, b spec.Outcome) spec.Outcome {
	rank := map[spec.Outcome]int{spec.InSpec: 0, spec.CannotTell: 1, spec.OutOfSpec: 2}
	if rank[b] > rank[a] {
		return b
	}
	return a
}
