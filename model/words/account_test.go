package words

import (
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"chargehand/model/account"
)

// accountSaid is what the account of an invented smelt says.
func accountSaid(t *testing.T, change func(*account.Smelt)) (verdict []string, whole string) {
	t.Helper()
	s := account.Smelt{
		Name: "invented", OwnSlag: 2,
		In:  []account.Stream{{Place: account.Ore, Name: "pond", Mass: account.Weighed(24, 0.3), Of: 0}},
		Out: []account.Stream{{Place: account.Bloom, Mass: account.Weighed(4, 0.05), Of: 1}, {Place: account.Slag, Mass: account.Weighed(13, 0.2), Of: 2}},
		Assays: []account.Assay{
			{Iron: account.Weighed(0.5, 0.005)}, {Iron: account.Taken(0.8, 0.02)}, {Iron: account.Weighed(0.6, 0.005)},
		},
	}
	change(&s)
	a, err := account.Of(s)
	if err != nil {
		t.Fatal(err)
	}
	return AccountVerdict(a), Account(a)
}

func TestAccountVerdictInWords(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*account.Smelt)
		want   []string
	}{
		"open": {func(s *account.Smelt) {}, []string{ // 12.0 in, 3.2 + 7.8 out
			"iron does not close by 1.0 kg, more than weighing explains; it would close if ore (pond) were 22.0 kg (not 24.0), ore (pond) held 46 % iron (not 50), " +
				"bloom were 5.2 kg (not 4.0), slag were 14.7 kg (not 13.0) or slag held 68 % iron (not 60)",
			"one balance: each of these alone would do it, and nothing here can say which",
		}},
		"explained": {func(s *account.Smelt) { s.Out[1].Mass = account.Weighed(14, 0.3) }, []string{
			"iron is open by 0.4 kg, no more than weighing and assays explain",
			"one balance: nothing here can say which figure is off",
		}},
		"solved for": {func(s *account.Smelt) { s.Out[1].Mass = account.Amount{} }, []string{
			"nothing to check against; slag was solved for: 14.7 kg (14.2 to 15.1)",
		}},
		"more out": {func(s *account.Smelt) { s.Assays[0].Iron = account.Weighed(0.4, 0.005) }, []string{
			"1.4 kg more iron came out than went in, more than weighing and assays explain",
		}},
		"nothing": {func(s *account.Smelt) { s.In = nil }, []string{
			"nothing to balance: neither what went in nor what came out was weighed",
		}},
		"no ore at all": {func(s *account.Smelt) {
			s.In[0].Mass = account.Weighed(0, 0)
		}, []string{
			"iron does not close by 11.0 kg, more than weighing explains; no figure alone would close it",
		}},
	} {
		verdict, whole := accountSaid(t, c.change)
		for _, w := range c.want {
			if !slices.Contains(verdict, w) {
				t.Errorf("%s:\n got %s\nwant %s", name, strings.Join(verdict, "\n     "), w)
			}
		}
		for _, line := range verdict {
			if !strings.Contains(whole, line+"\n") {
				t.Errorf("%s: the account lacks %q", name, line)
			}
		}
	}
}

// With two checks the likeliest are named with their odds, and nobody else is.
func TestAccountNamesTheLikeliest(t *testing.T) {
	verdict, _ := accountSaid(t, func(s *account.Smelt) {
		s.Assays[0].Silica, s.Assays[2].Silica = account.Weighed(0.11, 0.005), account.Weighed(0.38, 0.005)
		s.Assays[0].Iron = account.Weighed(0.4583, 0.005) // 11.0 in: iron closes
		s.Wall, s.Charcoal, s.AshShare = account.Weighed(2, 0.2), account.Weighed(40, 1), account.Taken(0.03, 0.005)
	})
	all := strings.Join(verdict, "\n")
	if !strings.Contains(all, "if just one figure is wrong: ") || !strings.HasPrefix(verdict[1], "likeliest, ") || !strings.Contains(verdict[1], "slag held 3") {
		t.Errorf("%s", all)
	}
	if strings.Contains(all, "metal") {
		t.Errorf("an assumed figure is named:\n%s", all)
	}
}

// A yield never stands without its base.
func TestAccountYieldsNameTheirBase(t *testing.T) {
	_, whole := accountSaid(t, func(*account.Smelt) {})
	for _, want := range []string{"bloom: 17 % of the ore, dry", "iron in the bloom: 27 % of the iron in the ore", "slag: 3.2 kg a kg of bloom"} {
		if !strings.Contains(whole, want) {
			t.Errorf("no %q in\n%s", want, whole)
		}
	}
}

// A share of the iron is none over 100 %: the band of one that may be nearly all ends there, and of one
// that comes out beyond it is said what that means, in the account and on the card of the result.
func TestNoShareOfTheIronIsOverAll(t *testing.T) {
	for _, c := range []struct{ iron, want, card string }{
		{"0.16", "iron in the bloom: 80 % of the iron in the ore (62 to 95)", "between 62 and 95 %"},
		{"0.10", "iron in the bloom: more than the iron in the ore: a figure is off or missing", "a figure is off or missing"},
	} {
		iron, _ := strconv.ParseFloat(c.iron, 64)
		var a account.Account
		_, whole := accountSaid(t, func(s *account.Smelt) {
			s.Assays[0].Iron, s.Out[1].Mass = account.Weighed(iron, 0.03), account.Amount{}
			a, _ = account.Of(*s)
		})
		if !strings.Contains(whole, c.want) {
			t.Errorf("%s: no %q in\n%s", c.iron, c.want, whole)
		}
		y := a.Yield(account.BloomIron, account.OreIron)
		if y == nil || y.Share.Band().P90 <= 1 {
			t.Fatalf("%s: the two alone leave %+v open", c.iron, y)
		}
		if card := ResultIronOf(*y); !strings.HasPrefix(card.Base, c.card) {
			t.Errorf("%s: the card says %+v", c.iron, card)
		}
	}
}

// A figure that is doubted and would have to be what cannot be is not said to be that.
func TestADoubtedFigureIsNotSaidToBeWhatCannotBe(t *testing.T) {
	for _, c := range []struct {
		of   account.Figure
		is   float64
		want string
	}{
		{account.IronOf, 0.5, "ore (pond) held other than 50 % iron, and another figure were off too"},
		{account.MassOf, 24, "ore (pond) were other than 24.0 kg, and another figure were off too"},
	} {
		f := account.If{Part: account.Part{Place: account.Ore, Name: "pond", Figure: c.of}, Is: c.is, Would: 1.07, CannotBe: true}
		if got := ifWords(f); got != c.want {
			t.Errorf("%s, want %s", got, c.want)
		}
	}
}

// Whatever was weighed and assayed, no verdict says that a figure were what none can be: a share of iron or silica over
// all of it, or a mass below nought. What the wall lost is told as it comes out: below nought it says that something
// else is off.
func TestNoVerdictNamesWhatCannotBe(t *testing.T) {
	impossible := regexp.MustCompile(`(held|were|brought) (-|(10[1-9]|1[1-9]\d|[2-9]\d\d|\d{4,}) %)`)
	r, other := rand.New(rand.NewPCG(1, 2)), 0
	for range 300 {
		iron, slag := 0.2+0.4*r.Float64(), 0.2+0.5*r.Float64()
		verdict, _ := accountSaid(t, func(s *account.Smelt) {
			s.In[0].Mass, s.Out[0].Mass, s.Out[1].Mass = account.Weighed(10+30*r.Float64(), 0.3), account.Weighed(8*r.Float64(), 0.05), account.Weighed(40*r.Float64(), 0.2)
			s.Assays[0] = account.Assay{Iron: account.Weighed(iron, 0.01), Silica: account.Weighed(0.05+0.2*r.Float64(), 0.01)}
			s.Assays[2] = account.Assay{Iron: account.Weighed(slag, 0.01), Silica: account.Weighed(0.1+0.3*r.Float64(), 0.01)}
			s.Wall, s.Charcoal, s.AshShare = account.Weighed(2, 0.5), account.Weighed(40, 1), account.Taken(0.03, 0.01)
		})
		all := strings.Join(verdict, "\n")
		if found := impossible.FindString(all); found != "" {
			t.Errorf("%q in\n%s", found, all)
		}
		other += strings.Count(all, " other than ")
	}
	if other == 0 {
		t.Error("none of these was doubted beyond what can be")
	}
}
