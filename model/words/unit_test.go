package words

import (
	"math"
	"testing"

	"chargehand/model/entry"
	"chargehand/model/rule"
)

// own are the units of a person who has chosen the last one of each quantity.
func inUnits(names ...string) Units {
	var u Units
	for q := range Quantities {
		for _, n := range names {
			u = u.With(q.String(), n)
		}
	}
	return u
}

// The pound and the inch after the agreement of 1959 (NIST SP 811): exact. The
// fixed points of water on the two scales of temperature. A cubic foot is 1728
// cubic inches of 2.54 cm.
func TestUnitsAgainstTheirDefinitions(t *testing.T) {
	for _, c := range []struct {
		name          string
		unit          string
		metric, shown float64
	}{
		{"lb", "kg", 0.45359237, 1}, {"lb", "kg/h", 45.359237, 100},
		{"inch", "cm", 2.54, 1}, {"inch", "mm", 25.4, 1}, {"inch", "cm", 50, 50 / 2.54},
		{"cfm", "l/min", 1728 * 2.54 * 2.54 * 2.54 / 1000, 1},
		{"°F", "°C", 0, 32}, {"°F", "°C", 100, 212}, {"°F", "C", -40, -40},
		{"mm of water", "Pa", 9.80665, 1}, {"inch of water", "Pa", 25.4 * 9.80665, 1},
	} {
		u := inUnits(c.name)
		if got := u.Shown(c.metric, c.unit); math.Abs(got-c.shown) > 1e-9 {
			t.Errorf("%v %s are %v %s, want %v", c.metric, c.unit, got, c.name, c.shown)
		}
		if got := u.Metric(c.shown, c.unit); math.Abs(got-c.metric) > 1e-7 {
			t.Errorf("%v %s are %v %s, want %v", c.shown, c.name, got, c.unit, c.metric)
		}
		if got := (Units{}).Shown(c.metric, c.unit); got != c.metric {
			t.Errorf("metric %s shows %v for %v", c.unit, got, c.metric)
		}
	}
}

// One l/min a cm² of bore is 0.2278 cfm a square inch: 6.4516 cm² of 1/28.3168
// cfm each.
func TestBlastOverTheBore(t *testing.T) {
	if got, want := inUnits("cfm", "inch").PerArea(1.47), "0.33 cfm a square inch"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := (Units{}).PerArea(1.47), "1.47 l/min a cm²"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestWordsInOwnUnits(t *testing.T) {
	u := inUnits("lb", "inch", "cfm", "°F", "inch of water")
	for _, c := range []struct{ got, want string }{
		{u.Kg(1.9), "4.19 lb"}, {u.Kg(20), "44.1 lb"}, {Units{}.Kg(1.9), "1.9 kg"}, {Units{}.Kg(20.04), "20 kg"},
		{u.Value(720, "l/min", 0), "25.4 cfm"}, {u.Value(7200, "l/min", 0), "254 cfm"}, {u.Value(500, "Pa", 0), "2.01 inch of water"},
		{u.Spread(41, 44, 47, "cm", 0), "17.3 ±1.2 inch"}, {Units{}.Spread(41, 44, 47, "cm", 0), "44 ±3 cm"},
		{Units{}.Spread(44, 44, 44, "cm", 0), "44 cm"},
		{u.Event(entry.Temperature{Degrees: 1200, Where: "wall"}), "2192 °F, wall"},
		{u.Event(entry.Dip{BelowRim: entry.Some(entry.Centimetre(10))}), "dip: 3.94 inch below the rim"},
		{u.Event(entry.Weigh{What: entry.WeighBloom, Mass: 5}), "weighed: bloom 11 lb"},
		{u.UnderMark(9), "3.5 under the mark"}, {u.UnderMark(-9), "3.5 over the mark"}, {u.UnderMark(1), AtTheMark}, {Units{}.UnderMark(9), "9 under the mark"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
	_, evidence, _ := u.Warning(rule.Warning{Rule: rule.StackLow, Evidence: rule.Evidence{
		{Name: "height", Number: 25.4, Unit: rule.Centimetres}, {Name: "mark", Number: 50.8, Unit: rule.Centimetres},
	}})
	if want := "10 inch above the tuyere, the mark is at 20 inch: ore passes too fast"; evidence != want {
		t.Errorf("%q, want %q", evidence, want)
	}
}

// A setting that this version does not know changes nothing.
func TestUnknownUnits(t *testing.T) {
	if u := inUnits("stone").With("luck", "kg"); u != (Units{}) {
		t.Errorf("%v", u)
	}
	for q := range Quantities {
		u := Units{}
		for range units[q] {
			u = u.Next(q)
		}
		if u != (Units{}) {
			t.Errorf("%s does not come round to metric", q)
		}
		for i := range units[q] {
			v := Units{}
			v[q] = i
			if back := (Units{}).With(q.String(), v.Of(q)); back != v {
				t.Errorf("%s is not found by its own name", v.Of(q))
			}
		}
	}
}
