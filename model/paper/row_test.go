package paper_test

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"chargehand/model/entry"
	"chargehand/model/paper"
)

var in = paper.In{Charcoal: entry.Part{What: entry.Charcoal, Measure: "bucket", Lot: "alder"}, Ore: entry.Part{What: entry.Ore, Measure: "scoop"}}

func counted(of entry.Part, n float64) entry.Part {
	of.Count = entry.Some(entry.Count(n))
	return of
}

func weighed(of entry.Part, kg float64) entry.Part {
	of.Measure, of.Mass = "", entry.Some(entry.Kilogram(kg))
	return of
}

func TestRowsAreRead(t *testing.T) {
	for _, c := range []struct {
		line   string
		minute int
		want   entry.Event
	}{
		{"10:42 c 1 4", 642, entry.Charge{Parts: entry.Parts{counted(in.Charcoal, 1), counted(in.Ore, 4)}}},
		{"1042\tC\t1,5kg\t2KG", 642, entry.Charge{Parts: entry.Parts{weighed(in.Charcoal, 1.5), weighed(in.Ore, 2)}}},
		{"10.42; c; 1; 0", 642, entry.Charge{Parts: entry.Parts{counted(in.Charcoal, 1), counted(in.Ore, 0)}}},
		{"9:05 s 1/2", 545, entry.Charge{Parts: entry.Parts{counted(in.Ore, 0.5)}}},
		{"905 f 3", 545, entry.Charge{Parts: entry.Parts{counted(in.Charcoal, 3)}}},
		{"11:10 b 720", 670, entry.Blast{Volume: entry.Some(entry.LitrePerMinute(720))}},
		{"11:10 b off", 670, entry.Blast{State: entry.BlastOff}},
		{"11:15 t", 675, entry.Tap{}},
		{"11:15 t 2.5kg", 675, entry.Tap{Mass: entry.Some(entry.Kilogram(2.5))}},
		{"11:16 r", 676, entry.Rod{}},
		{"11:16 p", 676, entry.Poke{}},
		{"11:20 l white", 680, entry.Look{At: entry.AtPeep, Sees: entry.PeepWhite}},
		{"11:20 l Sound gurgle", 680, entry.Look{At: entry.AtSound, Sees: entry.SoundGurgle}},
		{"11:20 l top gas out", 680, entry.Look{At: entry.AtTopGas, Sees: entry.TopGasOut}},
		{"11:25 i 44", 685, entry.Dip{BelowRim: entry.Some(entry.Centimetre(44))}},
		{"11:30 e 1250", 690, entry.Temperature{Degrees: 1250, Where: entry.WherePeep}},
		{"15:00 w bloom 4.6", 900, entry.Weigh{What: entry.WeighBloom, Mass: 4.6}},
		{"15:10 n it gurgled, then not", 910, entry.Note{Text: "it gurgled, then not"}},
		{"15:20 m", 920, entry.LastOre{}},
		{"15:30 d", 930, entry.BurnDown{}},
	} {
		r, err := paper.One(c.line, -1, in)
		if diff := cmp.Diff(c.want, r.Event); err != nil || diff != "" || r.Minute != c.minute {
			t.Errorf("%s: %v, minute %d (-want +got)\n%s", c.line, err, r.Minute, diff)
		}
	}
}

func TestBadRowsSayWhy(t *testing.T) {
	for line, want := range map[string]paper.Wrong{
		"c 1 4": paper.NoTime, "25:00 c 1 4": paper.NoTime, "10:42": paper.NoLetter, "10:42 z 4": paper.NotALetter,
		"10:42 c 1": paper.TooFew, "10:42 c 1 4 5": paper.TooMany, "10:42 r 1": paper.TooMany, "10:42 c one 4": paper.NotANumber,
		"10:42 b -7": paper.NotANumber, "10:42 c 1 1.2.3": paper.NotANumber, "9:00 c 1 4": paper.TimeBack, "10:42 l rainbow": paper.NotSeen, "10:42 w shoe 3": paper.NotWeighed,
		"10:42 e 99999": paper.OutOfRange, "10:42 c kg 1": paper.NotANumber, `10:42 c 1 NaN`: paper.NotANumber,
	} {
		_, err := paper.One(line, 9*60+30, in)
		var f paper.Fault
		if !errors.As(err, &f) || f.Wrong != want {
			t.Errorf("%s: %v, want %s", line, err, want)
		}
	}
	if _, err := paper.One("10:42 c 1 4", -1, paper.In{Charcoal: entry.Part{What: entry.Charcoal}, Ore: in.Ore}); !errors.As(err, new(paper.Fault)) {
		t.Errorf("counted in no measure: %v", err)
	}
}

// Rows go on past midnight, a ditto takes the time above, a bad row stops no other.
func TestManyRows(t *testing.T) {
	rows, faults := paper.Read([]string{"23:50 c 1 4", `" t`, "", "00:05 c 1 4", "23:00 t", "00:10 q", "0:20 d"}, in)
	var minutes []int
	for i, r := range rows {
		bad := i == 4 || i == 5
		if (faults[i] != nil) != bad {
			t.Errorf("row %d: %v", i, faults[i])
		}
		if !bad && r.Event != nil {
			minutes = append(minutes, r.Minute)
		}
	}
	if diff := cmp.Diff([]int{1430, 1430, 5, 20}, minutes); diff != "" {
		t.Error(diff)
	}
}

func FuzzOne(f *testing.F) {
	for _, s := range []string{"10:42 c 1 4", `" t`, "1042 b 1e9", "00:00 n \x00", "10:42 l top gas"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, line string) {
		r, err := paper.One(line, 600, in)
		switch {
		case err == nil && (r.Event == nil || entry.Check(r.Event) != nil || r.Minute < 0 || r.Minute >= 24*60):
			t.Errorf("%q gives %+v", line, r)
		case err != nil && !errors.As(err, new(paper.Fault)):
			t.Errorf("%q: %v", line, err)
		}
	})
}
