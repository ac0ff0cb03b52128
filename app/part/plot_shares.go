package part

import (
	"coilbook/app/drawing"
	"coilbook/app/words"
	"coilbook/engine/diagnose"
)

// Bars have room for so many suspects; each has at least such a probability.
const (
	mostBars   = 6
	leastShare = 0.01
)

// Shares draws the suspects, what the others of the list come to, and that it is none
// of the list: together all there is.
func Shares(s diagnose.Suspects) (drawing.Picture, Table) {
	t := Table{Head: []string{words.SuspectTitle, words.ShareColumn}}
	var bars []Bar
	var said []string
	add := func(name string, share float64, hollow bool) {
		b := Bar{Name: name, Figure: words.SuspectChance(share), Share: share, Hollow: hollow}
		bars = append(bars, b)
		said = append(said, words.BarSaid(b.Name, b.Figure))
		t.Rows = append(t.Rows, []string{b.Name, b.Figure})
	}
	rest, others := 0.0, 0
	for i, one := range s.Faults {
		if i < mostBars && one.Probability >= leastShare {
			add(words.Suspect(one.Fault), one.Probability, false)
			continue
		}
		rest += one.Probability
		others++
	}
	if others > 0 {
		add(words.ShareOthers(others), rest, true)
	}
	add(words.OffTheList, s.Unlisted, true)
	return Bars(words.SharesSaid(said), bars), t
}
