package quantity

import "strings"

// Displays announce over-range by letters in the place of digits or by a lone
// leading 1 with the other places blank; people write "open". Common practice.
var overWords = map[string]bool{
	"open": true, "open line": true, "over": true, "overload": true, "over-range": true,
	"over range": true, "inf": true, "infinite": true, "infinity": true, "∞": true, "----": true, "---": true,
}

// stateOf tells the signs of a display from numbers. The blanks at the end of
// the text as typed count; trimmed is the text without them. One blank behind a
// 1 is not enough: keyboards of phones add it.
func stateOf(trimmed, typed string) State {
	switch {
	case overRange(trimmed), isOverBlank(strings.ToUpper(typed)):
		return OverRange
	case unsettledWords[strings.ToLower(trimmed)]:
		return Unsettled
	}
	return Number
}

func overRange(t string) bool {
	if overWords[strings.ToLower(t)] {
		return true
	}
	up := strings.ToUpper(t)
	return isOverLetters(up) || isOverLetters(withoutUnits(up))
}

var unsettledWords = map[string]bool{
	"won't settle": true, "wont settle": true, "won’t settle": true, "unsettled": true,
	"unstable": true, "jumps": true, "jumping": true, "drifts": true, "wanders": true,
}
