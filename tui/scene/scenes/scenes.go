package scenes

import (
	"cmp"
	"errors"
	"time"

	"chargehand/model/entry"
	"chargehand/model/figure"
	"chargehand/model/forecast"
	"chargehand/model/rule"
	modelwords "chargehand/model/words"
	"chargehand/physics"
	"chargehand/tui/cell"
	"chargehand/tui/draw"
	"chargehand/tui/scene"
	"chargehand/tui/theme"
	"chargehand/tui/words"
)

// DiskFull is what is said of three entries that a full disk refuses.
var DiskFull = words.KeptNot(modelwords.EntriesHeld(3, errors.New("write /home/mk/.local/share/chargehand/book.db: no space left on device"), true), true)

// viewOf is what stands around a reading.
func ViewOf(r *figure.Reading) scene.View {
	return scene.View{
		Now: r.Wall(r.At), Title: cmp.Or(r.Light.Furnace.Name, r.Smelt), Kept: 214, NextKey: "c",
		Log: []draw.LogLine{
			{At: "14:23", Text: "charge 24: 1 bucket of charcoal, 4 scoops of ore"},
			{At: "14:19", Text: "looked at the flame: yellow, a hand high", Late: true},
			{At: "14:10", Text: "charge 23: 1 bucket of charcoal, 4 scoops of ore"},
			{At: "14:10", Text: "blast 720 l/min"},
			{At: "14:04", Text: "tapped slag", Struck: true},
			{At: "14:00", Text: "charge 22: 1 bucket of charcoal, 4 scoops of ore"},
			{At: "13:58", Text: "looked in the peep: white"},
		},
	}
}

// keys stand in the foot of every scene.
var keys = []draw.KeyHint{{Key: "c", Does: "charge as shown"}, {Key: "s", Does: "a scoop of ore"}, {Key: "f", Does: "charcoal only"}, {Key: "b", Does: "blast"},
	{Key: "t", Does: "tap"}, {Key: "r", Does: "rod the tuyere"}, {Key: "p", Does: "poke the burden"}, {Key: "d", Does: "dip"}, {Key: "l", Does: "look"}, {Key: "x", Does: "cross out the last"}}

// Scene is one picture: a reading, what stands around it, and the foot.
type Scene struct {
	Name   string
	R      *figure.Reading
	V      scene.View
	Answer draw.Answer
	Ask    *draw.Ask
}

// Painter paints a picture on all of a grid but its foot.
type Painter func(cell.Grid, draw.Pen, *figure.Reading, scene.View)

// Whole paints it in the places of the near view.
func Whole(g cell.Grid, p draw.Pen, r *figure.Reading, v scene.View) {
	w, h := g.Size()
	scene.Paint(g, p, scene.LayoutOf(w, h), r, v)
}

// Frame is a scene as the terminal takes it.
func (s Scene) Frame(th theme.Theme, w, h int, paint Painter) string {
	return s.FrameOn(new(cell.Grid), th, w, h, paint)
}

// FrameOn is the same on the sheet of the last frame, as the program draws it.
func (s Scene) FrameOn(sheet *cell.Grid, th theme.Theme, w, h int, paint Painter) string {
	*sheet = th.GridFrom(*sheet, w, h)
	g := *sheet
	p := draw.With(th, modelwords.Units{})
	if !p.TooSmall(g) {
		paint(g, p, s.R, s.V)
		foot, _ := g.Bounds().CutBottom(draw.FootRows)
		p.Foot(g.Sub(foot), s.Answer, s.Ask, keys, draw.KeyHint{Key: "h", Does: "help"})
	}
	return g.Encode(th.Palette())
}

// did is what the last key did, in every scene that says so.
var did = draw.Answer{Text: "charge 24: 1 bucket 1.9 kg, 4 scoops 2 kg", State: draw.IsKept}

func of(name string, r *figure.Reading) Scene {
	return Scene{Name: name, R: r, V: ViewOf(r), Answer: did}
}

// Named is the scene of a name.
func Named(name string) Scene {
	for _, s := range All() {
		if s.Name == name {
			return s
		}
	}
	panic("no scene " + name)
}

// All are all of them.
func All() []Scene { return append(near(), more()...) }

// near are scenes of the near view.
func near() []Scene {
	lit, vague, down := of("lit", JustLit()), of("unweighed", Unweighed()), of("burndown", BurnDown())
	lit.Answer = draw.Answer{}
	lit.V.Log, vague.V.Log, down.V.Log = nil, vague.V.Log[:1], down.V.Log[:2]
	down.V.Past = "imported, as it stood at its end"

	lost := of("notkept", MidSmelt())
	lost.V.NotKept, lost.V.Trouble = 3, DiskFull
	lost.V.Adding = &draw.Adding{Count: 2.5, What: "scoops of ore"}
	lost.Answer.State = draw.Unsafe

	due := of("due", MidSmelt())
	due.Answer = draw.Answer{}
	due.Ask = &draw.Ask{Label: "blast", Value: func(int) string { return theme.Theme{}.Component(theme.Field).Render("72") }, Hint: "l/min; enter when done, esc to leave it"}
	due.V.Due = Ahead(due.R, 12.3, forecast.BlastChanged)
	due.V.Warnings = []rule.Warning{{Rule: rule.TuyereDim, Grade: rule.Look, Onset: due.R.At - 11*time.Minute, Acknowledged: true,
		Evidence: rule.Evidence{{Name: "where", Word: string(entry.AtPeep)}, {Name: "seen", Word: "dark on one side"}}}}

	late := of("late", MidSmelt())
	late.V.Due = Ahead(late.R, 2.5, forecast.BlastChanged)
	late.V.Warnings = []rule.Warning{
		{Rule: rule.BlastLost, Grade: rule.Act, Onset: late.R.At - 3*time.Minute, Evidence: rule.Evidence{{Name: "off", Number: 3, Unit: rule.Minutes}}},
		{Rule: rule.TuyereDim, Grade: rule.Look, Onset: late.R.At - 12*time.Minute}}
	late.R.OreHeld = true
	late.R.Next = late.R.Next[:1]

	pressed := of("pressed", MidSmelt())
	pressed.V.Warnings = []rule.Warning{Standing(pressed.R, rule.PressureHigh, rule.Evidence{
		{Name: "pressure", Number: 1180, Unit: rule.Pascals}, {Name: "clear", Number: 642, Unit: rule.Pascals}})}
	pressed.R.PressedAt = pressed.R.At - 3*time.Minute
	pressed.R.Figures[figure.BackPressure] = figure.Figure{Band: physics.Exact(1180)}
	pressed.R.Figures[figure.BackPressureUsual] = figure.Figure{Band: physics.LogNormal(578, 0.54), Basis: figure.Guessed}
	pressed.R.Blast = entry.Blast{Gate: "8"}
	pressed.R.Figures[figure.Air] = figure.Figure{Band: physics.LogNormal(610, 0.18), Basis: figure.Estimated}
	return []Scene{of("midsmelt", MidSmelt()), lit, vague, down, lost, due, late, pressed}
}

// ahead is a forecast so many minutes after the last charge, give or take a
// seventh.
func Ahead(r *figure.Reading, minutes float64, doubts ...forecast.Doubt) *forecast.Due {
	from := r.Charges[len(r.Charges)-1].At
	in := func(m float64) forecast.Ahead {
		return forecast.Ahead{From: from, Minutes: physics.Band{P10: m * 6 / 7, P50: m, P90: m * 8 / 7}}
	}
	return &forecast.Due{Next: in(minutes), Three: in(3 * minutes), Intervals: 8, Doubts: doubts}
}
