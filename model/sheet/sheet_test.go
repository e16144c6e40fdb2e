package sheet_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/paper"
	"chargehand/model/plan"
	"chargehand/model/sheet"
	"chargehand/model/words"
)

const eight = 8 * time.Hour

// plans are kept plans of three sizes in every way to charge, from a house with measures.
func plans(t testing.TB) (all []house.Plan, h house.State) {
	t.Helper()
	h.Measures = []entry.Measure{{Name: "bucket", What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}, {Name: "scoop", What: entry.Ore, Mass: entry.Some(entry.Kilogram(0.5))}}
	for _, kg := range []float64{1.5, 3, 5} {
		p := plan.Of(plan.Ask{Want: plan.Want{What: entry.BloomPiece, Kg: kg, Sure: 0.5}, Smelts: 10})
		for _, w := range p.Ways {
			e := p.Kept(h, w.Name)
			e.Name, e.Day = fmt.Sprintf("%g %s", kg, w.Name), "2026-06-12"
			all = append(all, house.Plan{Plan: e})
		}
	}
	if len(all) != 9 {
		t.Fatalf("%d plans", len(all))
	}
	return all, h
}

// The rows hold every charge of the plan once, at rising times, with the letters of the
// paper log; and the day is told in ten lines.
func TestEveryChargeOfThePlanStandsOnTheSheet(t *testing.T) {
	all, h := plans(t)
	for _, p := range all {
		s := sheet.Of(sheet.FromHouse(h, &p, eight))
		charges := 0
		for _, w := range p.Plans {
			if w.Name != p.Taken {
				continue
			}
			for _, st := range w.Steps {
				if st.Does != entry.StepFill {
					charges += st.Charges
				}
			}
		}
		rows, last := 0, "00:00"
		for _, r := range s.Rows {
			if r.Time == "" {
				continue
			}
			if r.Time < last {
				t.Errorf("%s: %s after %s", p.Name, r.Time, last)
			}
			last = r.Time
			l, ok := paper.Of(r.Letter)
			if !ok || r.Planned == "" {
				t.Errorf("%s: %+v", p.Name, r)
			}
			if l.Kind == entry.KindCharge {
				rows++
			}
		}
		if rows != charges+1 { // and the fill
			t.Errorf("%s: %d rows of %d charges and a fill", p.Name, rows, charges)
		}
		if n := len(s.Day); n < 7 || n > 10 || s.Day[0].Time != "08:00" {
			t.Errorf("%s: the day has %d lines: %v", p.Name, n, s.Day)
		}
		if i := slices.IndexFunc(s.Rows, func(r sheet.Row) bool { return r.Time == "" }); len(s.Rows) < sheet.PageRows || i < 0 && len(s.Rows) > sheet.PageRows {
			t.Errorf("%s: %d rows, none blank", p.Name, len(s.Rows))
		}
	}
}

// Without a plan, and without a house, there is a log to fill in and a page for the wall.
func TestASheetWithoutAPlan(t *testing.T) {
	s := sheet.Of(sheet.FromHouse(house.State{}, nil, eight))
	if s.Planned || len(s.Rows) != sheet.PageRows || len(s.Day) == 0 || len(s.Day) > 10 || len(s.Wall) != entry.WallQuestions {
		t.Errorf("%+v", s)
	}
	for _, f := range s.Wall {
		if f.Says != "" || f.Name == "" {
			t.Errorf("%+v", f)
		}
	}
}

// What was keyed for the wall, and the last three lessons of this furnace or ore mix, stand
// on it; those of another do not.
func TestWordsAndLessonsStandOnIt(t *testing.T) {
	all, h := plans(t)
	h.Furnaces = []house.Furnace{{ID: "f1f1f1f1f1f1f1f1", Versions: []house.Version{{Furnace: entry.Furnace{Name: "Reed Hollow"}}}}}
	h.Lots = []house.Lot{{ID: "a1a1a1a1a1a1a1a1", Lot: entry.Lot{Name: "pond", What: entry.Ore, Mix: "reed"}}}
	h.Lessons = []entry.Lesson{
		{Text: "one", Furnace: "f1f1f1f1f1f1f1f1"}, {Text: "two", Mix: "reed"}, {Text: "elsewhere", Furnace: "f2f2f2f2f2f2f2f2"},
		{Text: "three", Furnace: "f1f1f1f1f1f1f1f1"}, {Text: "four"},
	}
	h.WallWords = entry.WallWords{}.Answered(entry.WallWater, "stream").With("gate code")
	p := all[0]
	p.Furnace, p.Lots = "f1f1f1f1f1f1f1f1", []entry.UID{"a1a1a1a1a1a1a1a1"}
	s := sheet.Of(sheet.FromHouse(h, &p, eight))
	if got := strings.Join(s.Lessons, " "); got != "four three two" {
		t.Errorf("lessons %q", got)
	}
	if s.Wall[entry.WallWater].Says != "stream" || s.Wall[entry.WallNumber].Says != "" || len(s.Own) != 1 || s.Own[0] != "gate code" {
		t.Errorf("%+v %v", s.Wall, s.Own)
	}
}

// Whatever was typed stands on the page as text, and no link leaves it.
func FuzzHostileWords(f *testing.F) {
	all, h := plans(f)
	f.Add("Reed Hollow")
	f.Add(`</style><script>alert(1)</script>`)
	f.Add(`" onload="x`)
	f.Add("https://elsewhere.example/")
	f.Fuzz(func(t *testing.T, name string) {
		name = strings.TrimSpace(strings.ToValidUTF8(name, ""))
		if name == "" || strings.ContainsAny(name, "\x00\r") {
			t.Skip()
		}
		p, h := all[0], h
		p.Name = name
		h.WallWords = entry.WallWords{}.Answered(entry.WallWhere, name).With(name)
		h.Lessons = []entry.Lesson{{Text: name}}
		var b bytes.Buffer
		if err := sheet.Of(sheet.FromHouse(h, &p, eight)).Page(&b, "printed"); err != nil {
			t.Fatal(err)
		}
		doc, err := html.Parse(&b)
		if err != nil {
			t.Fatal(err)
		}
		found := 0
		for n := range doc.Descendants() {
			switch {
			case n.Type == html.TextNode && strings.TrimSpace(n.Data) == name:
				found++
			case n.Type == html.ElementNode && slices.Contains([]string{"script", "a", "img", "link", "iframe", "object", "embed"}, n.Data):
				t.Fatalf("the page has a %s", n.Data)
			case n.Type == html.ElementNode:
				for _, a := range n.Attr {
					if strings.HasPrefix(a.Key, "on") || a.Key == "src" || a.Key == "href" {
						t.Fatalf("a %s with %s", n.Data, a.Key)
					}
				}
			}
		}
		if found < 3 {
			t.Errorf("%q is found %d times as text", name, found)
		}
	})
}

// Every letter, question and role has its words.
func TestEverythingHasWords(t *testing.T) {
	s := sheet.Of(sheet.Ask{})
	for _, l := range s.Letters {
		if l.Does == "" {
			t.Errorf("%+v", l)
		}
	}
	if len(s.Letters) != len(paper.Letters) || len(words.SheetRoles) == 0 {
		t.Error("letters or roles are missing")
	}
}
