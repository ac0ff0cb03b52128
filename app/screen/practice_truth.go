package screen

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/device"
	"coilbook/app/part"
	"coilbook/app/words"
	"coilbook/engine/machine"
	"coilbook/engine/practice"
	"coilbook/engine/spec"
	"coilbook/specs"
)

// practiceTruth tells what was wrong, what each reading could have told, and how
// the guided checks would have gone.
type practiceTruth struct {
	app.Compo
	Room     *room
	Rev      int
	Profiles []spec.Profile

	copied string
}

// OnMount begins to work things out.
func (s *practiceTruth) OnMount(app.Context) { s.Room.tell(specs.DefaultID, s.Profiles) }

// OnUpdate begins when the readings of a reloaded bench are there.
func (s *practiceTruth) OnUpdate(app.Context) { s.Room.tell(specs.DefaultID, s.Profiles) }

// OnDismount ends what nobody will see.
func (s *practiceTruth) OnDismount() { s.Room.hush() }

// Render draws the truth, or the way to it.
func (s *practiceTruth) Render() app.UI {
	r := s.Room
	code := r.bench.Code()
	if r.named == "" {
		return app.Div().Class("page").Body(
			head(words.BenchCode(code), plainSign(), benchPath(code)),
			app.Main().Class("main").Body(heading(words.NotNamed), part.Link("main-act", namingPath(code)).ID("name").Text(words.NameEarly)),
			foot(""),
		)
	}
	return app.Div().Class("page").Body(
		head(words.BenchCode(code), plainSign(), benchPath(code)),
		app.Main().Class("main").Body(
			s.verdict(),
			app.H2().Text(words.CurveTitle),
			curves(r.bench.Curve()),
			app.H2().Text(words.ToldTitle),
			s.told(),
			app.H2().Text(words.GuidedTitle),
			s.guided(),
			s.share(code),
			part.Text("quiet", words.Simulated),
			part.Text("quiet", words.DeferToManual),
		),
		app.Footer().Class("act two").Body(
			part.Button("other-act", words.SameAgain, s.again).ID("again"),
			part.Button("main-act", words.NextBenchWord, s.next).ID("next"),
		),
	)
}

func (s *practiceTruth) again(ctx app.Context) {
	s.Room.again()
	part.Go(ctx, benchPath(s.Room.bench.Code()))
}

func (s *practiceTruth) next(ctx app.Context) {
	part.Go(ctx, benchPath(practice.CodeOf(s.Room.bench.Level, device.Seed())))
}

// verdict is how near the named fault came, with what it was and what to do.
func (s *practiceTruth) verdict() app.UI {
	r := s.Room
	outcome, truth := r.bench.Judge(r.named), r.bench.Truth()
	tone := map[practice.Outcome]spec.Outcome{practice.RightFault: spec.InSpec, practice.RightPart: spec.CannotTell, practice.WrongPart: spec.OutOfSpec}[outcome]
	return app.Div().Class("card truth "+part.Tone(tone)).ID("truth").Body(
		app.Div().Class("truth-head").Body(part.Mark(tone), heading(words.Named(outcome))),
		app.P().Class("truth-is").Text(words.FaultIs(truth, r.bench.Build)),
		part.When("bare", outcome != practice.RightFault, func() app.UI { return part.Text("quiet", words.YouNamed(r.named)) }),
		part.Text("because", words.FaultRemedy(truth.Kind)),
		part.Text("quiet", words.MinutesSpent(r.minutes(), len(r.taken))+"."),
	)
}

// told is what the readings spoke against, one by one and together.
func (s *practiceTruth) told() app.UI {
	r := s.Room
	t := r.told
	switch {
	case len(r.taken) == 0:
		return part.Text("", words.ToldNothing)
	case t == nil:
		return part.Text("quiet", words.ReadingNow)
	}
	var rows []app.UI
	for i, one := range r.taken {
		rows = append(rows, s.spoke(i, one, t))
	}
	working := t.done < t.all()
	return app.Div().Class("verdicts").ID("told").Body(
		part.When("bare", working, func() app.UI {
			return app.Div().Class("progress").Attr("role", "status").Body(
				app.Span().Text(words.Working(t.done, t.all())),
				app.Progress().Max(t.all()).Value(t.done).Aria("label", words.ToldTitle))
		}),
		part.When("bare", !working, func() app.UI { return leftOver(t.left()) }),
		app.Div().Class("rows").Body(rows...),
	)
}

func leftOver(left []machine.Kind) app.UI {
	return app.Div().Class("card").ID("left").Body(
		app.Strong().Text(words.LeftOver(left)),
		part.When("bare", len(left) > 1, func() app.UI { return kindList("left", words.Suspects, left) }),
	)
}

func (s *practiceTruth) spoke(i int, one *reading, t *telling) app.UI {
	r := s.Room
	against := t.against[i]
	return app.Div().Class("row logged").Body(app.Div().Class("row-name").Body(
		app.Strong().Text(words.Shown(one.probe.Display, r.bench.Instrument.Meter.Auto)),
		app.Small().Text(words.Probed(one.Probing, one.Dial, r.bench.Build.Kick)),
		part.When("spoke", t.over(i), func() app.UI { return app.Span().Text(words.SpokeAgainst(len(against), len(t.rivals))) }),
		part.When("bare", t.over(i) && len(against) > 0, func() app.UI { return kindList("against-"+strconv.Itoa(i), words.Suspects, against) }),
	))
}

func kindList(id, title string, kinds []machine.Kind) app.UI {
	var items []app.UI
	for _, k := range kinds {
		items = append(items, app.Li().Text(words.Fault(k)))
	}
	return app.Details().Class("traps").ID(id+"-names").Body(app.Summary().Text(title), app.Ul().Body(items...))
}

// guided is the route of the guided checks on the same machine.
func (s *practiceTruth) guided() app.UI {
	t := s.Room.told
	switch {
	case t == nil || !t.guided && t.trouble == nil:
		return part.Text("quiet", words.GuidedWorking)
	case t.trouble != nil:
		return part.Text("problem", t.trouble.Error())
	}
	found, ok := t.found()
	sentence := words.GuidedMissed
	if ok {
		sentence = words.GuidedFound(words.CheckName(found.Check), found.Minutes)
	}
	var rows []app.UI
	for _, step := range t.steps {
		rows = append(rows, stepRow(step))
	}
	return app.Div().Class("verdicts").ID("guided").Body(
		app.P().Class("card").Body(app.Strong().Text(sentence)),
		app.Div().Class("rows").Body(rows...), legend(),
	)
}

func stepRow(step practice.Step) app.UI {
	class, verdict := "row still", words.Noted
	if step.Judged() {
		verdict = words.Outcome(step.Verdict.Outcome)
	}
	if step.Finds {
		class += " finds"
	}
	return app.Div().Class(class).Body(
		app.Span().Class("row-name").Body(app.Span().Text(words.CheckName(step.Check)), app.Small().Text(words.StepMinutes(step.Minutes)+" · "+verdict)),
		app.Span().Class("row-reading").Text(words.Reading(step.Line)),
		rowMark(step.Line),
	)
}

// share hands the code on.
func (s *practiceTruth) share(code string) app.UI {
	return app.Div().Class("card share").Body(
		app.H2().Text(words.ShareTitle),
		app.P().Class("code").ID("code").Text(code),
		part.Text("quiet", words.ShareHint),
		app.Div().Class("options").Body(
			app.If(device.CanShare(), func() app.UI {
				return part.Button("option", words.ShareIt, func(app.Context) { device.Share(words.ShareText(code), benchPath(code)) }, code)
			}),
			part.Button("option", words.CopyIt, func(ctx app.Context) { s.copy(ctx, code) }, code).ID("copy"),
		),
		app.P().Class("quiet").Attr("role", "status").Text(s.copied),
	)
}

func (s *practiceTruth) copy(ctx app.Context, code string) {
	device.Copy(words.ShareText(code), benchPath(code), func(done bool) {
		ctx.Dispatch(func(app.Context) {
			if s.copied = words.NotCopied; done {
				s.copied = words.Copied
			}
		})
	})
}
