package screen

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/assess"
)

// meterResult says what the meter's self-check told, one card for each thing.
func meterResult(b assess.Bench) []app.UI {
	var cards []app.UI
	for _, t := range words.WhatMeterTold(b) {
		class := ""
		if t.Open {
			class = "quiet"
		}
		told := []app.UI{app.H2().Text(t.Title)}
		for _, sentence := range t.Sentences {
			told = append(told, part.Text(class, sentence))
		}
		cards = append(cards, app.Article().Class("card told").Body(told...))
	}
	return cards
}
