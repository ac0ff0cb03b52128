package diagnose

import "coilbook/engine/check"

// again lists readings that could be taken once more, each that was taken once: a
// slip is hardly made twice. Its outcomes are that it was one and that it was none.
func (m *Model) again(s Suspects, evidence []Evidence, refused func(check.Check) bool) (out []Choice, tables [][][]float64) {
	times := map[check.ID]int{}
	for _, e := range evidence {
		times[e.Check]++
	}
	all := make([]float64, len(m.naming.columns))
	all[len(m.naming.sets)] = s.Unlisted
	for i, h := range m.hypotheses {
		all[h.set] += s.weights[i]
	}
	for at, e := range evidence {
		j, ok := m.index[e.Check]
		if !ok || times[e.Check] > 1 || at >= len(s.slips) {
			continue
		}
		c := m.Checks[j]
		if c.Instrument != check.Multimeter || refused != nil && refused(c) || inRow(c) && junction(e) {
			continue
		}
		slipped, sound := make([]float64, len(all)), make([]float64, len(all))
		copy(slipped, s.slips[at])
		for p := range all {
			sound[p] = max(all[p]-slipped[p], 0)
		}
		out = append(out, Choice{Check: c, Minutes: c.Minutes, Again: true})
		tables = append(tables, [][]float64{slipped, sound})
	}
	return out, tables
}
