package assess

import (
	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/spec"
)

// Report is a whole session judged.
type Report struct {
	Lines    []Line
	Balance  *Balance // nil where the build has no group of leads to compare
	Parts    []PartResult
	Untested []check.ID // checks of the plan without a reading that can be read
}

// Balance is the verdict on leads that should read alike.
type Balance struct {
	Verdict spec.Verdict
	Checks  []check.Check // the readings compared, in order
	Missing int           // readings still to come
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
		if !l.Answered || l.Skipped || l.Unread != nil {
			r.Untested = append(r.Untested, c.ID)
		}
	}
	r.Balance = b.balance(r.Lines)
	r.Parts = parts(r)
	return r
}

func (b Bench) balance(lines []Line) *Balance {
	limit, ok := b.Profile.Limit(spec.ChargeBalance)
	if !ok {
		return nil
	}
	out := Balance{}
	var readings []meter.Measurement
	for _, l := range lines {
		if l.Check.Measures != spec.ChargePair {
			continue
		}
		out.Checks = append(out.Checks, l.Check)
		if !l.Answered || l.Skipped || l.Unread != nil {
			out.Missing++
			continue
		}
		readings = append(readings, l.Measured)
	}
	if len(out.Checks) < 2 {
		return nil
	}
	out.Verdict = spec.Verdict{Reason: spec.CannotCompare, Probability: 0.5, Limit: limit, HasLimit: true}
	if out.Missing == 0 {
		out.Verdict = spec.JudgeBalance(limit, readings)
		if b.badLeads {
			out.Verdict = spec.LeadsFirst(out.Verdict)
		}
	}
	return &out
}

func parts(r Report) []PartResult {
	var out []PartResult
	index := map[check.Part]int{}
	for _, l := range r.Lines {
		i, ok := index[l.Check.Part]
		if !ok {
			i = len(out)
			index[l.Check.Part] = i
			out = append(out, PartResult{Part: l.Check.Part, Outcome: spec.InSpec})
		}
		out[i].Of++
		if l.Answered && !l.Skipped && l.Unread == nil {
			out[i].Tested++
			out[i].Outcome = worse(out[i].Outcome, l.Verdict.Outcome)
		}
	}
	if r.Balance != nil && r.Balance.Missing == 0 {
		i := index[check.ChargeWinding]
		out[i].Outcome = worse(out[i].Outcome, r.Balance.Verdict.Outcome)
	}
	for i := range out {
		if out[i].Tested == 0 {
			out[i].Outcome = spec.CannotTell
		}
	}
	return out
}

// worse orders the outcomes: a part is in spec only when all its readings are.
func worse(a, b spec.Outcome) spec.Outcome {
	rank := map[spec.Outcome]int{spec.InSpec: 0, spec.CannotTell: 1, spec.OutOfSpec: 2}
	if rank[b] > rank[a] {
		return b
	}
	return a
}
