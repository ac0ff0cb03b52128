package words

import (
	"math"
	"strings"

	"coilbook/engine/check"
	"coilbook/engine/diagnose"
	"coilbook/engine/fault"
	"coilbook/engine/quantity"
)

// Words of the reasons.
var (
	ReasonsTitle = text("For and against")
	ForTitle     = text("For it")
	AgainstTitle = text("Against it")
	NoReasons    = text("No reading so far tells it from the other suspects: it stands where it stood.")
	MeansTitle   = text("What each answer would mean")
	FindingRests = text("What it rests on")
)

// Reason says what a reading tells about a suspect: what was read, what nine in ten
// machines with that fault read, and how much more often it is met with the fault
// than with the others.
func Reason(k check.Check, value string, f fault.Fault, r diagnose.Reason) string {
	out := CheckName(k) + ": " + value + ". "
	usual := usualAnswer(k, r)
	if usual == "" {
		return out + upperFirst(oftener(r.Weight)) + "."
	}
	number := r.Answer.State == quantity.Number && k.Instrument != check.Eyes && (r.Low != 0 || r.High != 0)
	sound, often := f.ID == fault.None, oftener(r.Weight)
	evenSo := number && r.Weight > 0 && !r.Usual()
	but := number && r.Weight < 0 && r.Usual()
	switch {
	case sound && evenSo:
		return out + say("Of sound machines %s; even so, %s.", usual, often)
	case sound && but:
		return out + say("Of sound machines %s too; but %s.", usual, often)
	case sound:
		return out + say("Of sound machines %s; %s.", usual, often)
	case evenSo:
		return out + say("With this fault %s; even so, %s.", usual, often)
	case but:
		return out + say("With this fault %s too; but %s.", usual, often)
	}
	return out + say("With this fault %s; %s.", usual, often)
}

// usualAnswer is what machines with a fault answer; "" where nothing is known.
func usualAnswer(k check.Check, r diagnose.Reason) string {
	const nearlyAll, few = 0.9, 0.1
	number := r.Low != 0 || r.High != 0
	switch {
	case k.Instrument == check.Eyes:
		return say("%s say yes", inHundred(r.Open))
	case r.Open >= nearlyAll:
		return say("nearly all read open line")
	case r.Restless >= nearlyAll:
		return say("nearly all will not settle")
	case !number:
		return ""
	case r.Open >= few:
		return say("%s read open line, most others %s", inHundred(r.Open), Span(k, r.Low, r.High))
	case r.Restless >= few:
		return say("%s do not settle, most others read %s", inHundred(r.Restless), Span(k, r.Low, r.High))
	}
	return say("nine in ten read %s", Span(k, r.Low, r.High))
}

func inHundred(share float64) string {
	switch n := math.Round(share * 100); {
	case n < 1:
		return say("hardly any")
	case n > 99:
		return say("nearly all")
	default:
		return say("%d in 100", int(n))
	}
}

// oftener says by how much an answer is likelier with a fault than without; bits
// above zero speak for the fault.
func oftener(bits float64) string {
	with := say("with it")
	if bits < 0 {
		with = say("with the other suspects")
	}
	switch times := math.Exp2(math.Abs(bits)); {
	case times >= 100:
		return say("such an answer comes over 100 times as often %s", with)
	case times >= 3:
		return say("such an answer comes %s times as often %s", decimal(times, 0), with)
	default:
		return say("such an answer comes %s times as often %s", decimal(times, 1), with)
	}
}

// Span writes a range of readings of a check, SI, with no more figures than its
// width supports.
func Span(k check.Check, low, high float64) string {
	kind := k.Kind()
	if kind == quantity.Resistance && low >= openFrom {
		return say("open line")
	}
	u := units.UnitFor(kind, math.Max(math.Abs(low), math.Abs(high)))
	if low > 0 && u != units.UnitFor(kind, low) && high/low > 30 {
		return say("%s to %s", twoFigures(kind, low), twoFigures(kind, high))
	}
	decimals := decimalsOver(u.In(high) - u.In(low))
	from, to := decimal(u.In(low), decimals), decimal(u.In(high), decimals)
	if from == to {
		return say("about %s %s", to, u.Name)
	}
	return say("%s to %s %s", strings.Replace(from, "-", "−", 1), strings.Replace(to, "-", "−", 1), u.Name)
}

// openFrom is from where a range of ohms is as good as open, in Ω. Common practice,
// no source.
const openFrom = 1.9e6

// decimalsOver is the decimals in which a third of a width still shows.
func decimalsOver(width float64) int {
	if !(width > 0) {
		return 1
	}
	return min(max(int(math.Ceil(-math.Log10(width/3))), 0), 3)
}

// twoFigures writes one number with two figures, volts with a tenth at least.
func twoFigures(kind quantity.Kind, v float64) string {
	u := units.UnitFor(kind, v)
	x := u.In(v)
	decimals := 1
	if x != 0 {
		decimals = min(1-int(math.Floor(math.Log10(math.Abs(x)))), 3)
	}
	if u == quantity.Volts {
		decimals = max(decimals, 1)
	}
	if decimals < 0 {
		ten := math.Pow(10, float64(-decimals))
		x, decimals = math.Round(x/ten)*ten, 0
	}
	return strings.Replace(decimal(x, decimals), "-", "−", 1) + " " + u.Name
}

// MeaningAnswer names an answer to a check.
func MeaningAnswer(k check.Check, m diagnose.Meaning) string {
	switch {
	case k.Instrument == check.Eyes:
		return Answer(m.Yes)
	case m.State == quantity.OverRange:
		return say("Open line")
	case m.State == quantity.Unsettled:
		return say("Won't settle")
	}
	return upperFirst(between(k.Kind(), m.Low, m.High))
}

// between writes a span whose ends other spans share: both with two figures.
func between(kind quantity.Kind, low, high float64) string {
	switch {
	case math.IsInf(low, -1) && math.IsInf(high, 1):
		return say("any number")
	case math.IsInf(low, -1):
		return say("under %s", twoFigures(kind, high))
	case math.IsInf(high, 1):
		return say("%s or more", twoFigures(kind, low))
	}
	from, to := twoFigures(kind, low), twoFigures(kind, high)
	if unit := " " + units.UnitFor(kind, high).Name; strings.HasSuffix(from, unit) {
		from = strings.TrimSuffix(from, unit)
	}
	return say("%s to %s", from, to)
}

// MeaningTells says what an answer would point to, and how sure.
func MeaningTells(m diagnose.Meaning) string {
	points := say("No fault")
	if !m.Parts.None() {
		points = PartsTogether(m.Parts)
	}
	return points + ", " + strings.ReplaceAll(certainty(m.Sure), " ", "\u00a0")
}

// MeaningChance says how often an answer is expected.
func MeaningChance(m diagnose.Meaning) string { return say("expected in %s", certainty(m.Chance)) }

// WhyConfirm says why a check comes before what is named is bought or mended.
func WhyConfirm(named fault.Parts, chance float64) string {
	return say("%s: %s sure. Read this before you buy or mend anything: something that nobody thought of may look the same.", PartsTogether(named), certainty(chance))
}

// WhyNext says what a check is expected to bring: how far the likeliest part would
// rise, and what it tells apart.
func WhyNext(x diagnose.Choice, likeliest float64, means []diagnose.Meaning, suggested bool) string {
	const worthwhile, nearly = 0.01, 0.999
	out := say("It is not expected to change much: the likeliest part stays at about %s.", certainty(likeliest))
	if x.Gain >= worthwhile {
		out = say("The likeliest part stands at %s; after this check it is expected at %s.", certainty(likeliest), certainty(math.Min(likeliest+x.Gain, nearly)))
	} else if suggested && x.Bits > 0 {
		out = say("It is not expected to change who leads, but rules others out.")
	}
	if apart := tellsApart(means); apart != "" {
		out += " " + say("It tells apart: %s.", apart)
	}
	if suggested {
		out += " " + say("No other check tells more for its minutes.")
	}
	return out
}

// tellsApart names up to three parts that answers point to; "" for one alone.
func tellsApart(means []diagnose.Meaning) string {
	const most = 3
	var names []string
	seen := map[fault.Parts]bool{}
	for _, m := range means {
		if seen[m.Parts] || len(names) == most {
			continue
		}
		seen[m.Parts] = true
		name := say("a sound machine")
		if !m.Parts.None() {
			name = lowerFirst(PartsTogether(m.Parts))
		}
		names = append(names, name)
	}
	if len(names) < 2 {
		return ""
	}
	return strings.Join(names, "; ")
}

// RestsOn says that a finding stands on one answer, and what another one would mean.
func RestsOn(k check.Check, a diagnose.Action, r diagnose.Reason) string {
	before := say("Before you buy")
	if a == diagnose.Repair {
		before = say("Before you start")
	}
	usual := say("if it then reads otherwise, it is not this")
	switch {
	case k.Instrument == check.Eyes && r.Open >= 0.5:
		usual = say("if the answer is no then, it is not this")
	case k.Instrument == check.Eyes:
		usual = say("if the answer is yes then, it is not this")
	case r.Open >= 0.5:
		usual = say("unless it reads open line again, it is not this")
	case r.Usual():
		usual = say("if it is then well away from %s, it is not this", Span(k, r.Low, r.High))
	}
	return say("%s, take once more the reading that speaks loudest for it: %s.", before, usual)
}
