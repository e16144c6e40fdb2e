package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/learn"
	"chargehand/model/plan"
	"chargehand/model/words"
	"chargehand/physics"
)

func planCommand() command {
	return command{name: "plan", usage: "--bloom KG | --billet KG | --bar KG", does: words.PlanDoes, setUp: func(flags *flag.FlagSet) func(world, common, []string) error {
		var bloom, billet, bar, blast float64
		var furnace, ore, forge string
		var bands bool
		sure, seed := 0.5, -1.0
		flags.Float64Var(&bloom, "bloom", 0, words.FlagBloom)
		flags.Float64Var(&billet, "billet", 0, words.FlagBillet)
		flags.Float64Var(&bar, "bar", 0, words.FlagBar)
		flags.Float64Var(&sure, "sure", 0.5, words.FlagSure)
		flags.Float64Var(&blast, "blast", 0, words.FlagBlast)
		flags.StringVar(&furnace, "furnace", "", words.FlagPlanFurnace)
		flags.StringVar(&ore, "ore", "", words.FlagOre)
		flags.StringVar(&forge, "forge", "", words.FlagForge)
		flags.Func("seed-slag", words.FlagSeedSlag, func(s string) (err error) {
			if seed, err = strconv.ParseFloat(s, 64); err == nil && !(seed >= 0 && seed <= 20) {
				err = errors.New(words.PlanSeedSlag(seed))
			}
			return err
		})
		flags.BoolVar(&bands, "bands", false, words.FlagBands)
		return wing{where: entry.OnPlan, examples: planExamples}.setUp(func(w world, c common) error {
			a := plan.Ask{Want: plan.Want{Sure: sure}}
			wanted := 0
			for what, kg := range map[entry.PieceKind]float64{entry.BloomPiece: bloom, entry.Billet: billet, entry.Bar: bar} {
				if kg != 0 {
					a.What, a.Kg = what, kg
					wanted++
				}
			}
			if wanted != 1 {
				return wrongUse{errors.New(words.PlanWantsOne)}
			}
			if !(a.Kg > 0 && a.Kg <= 1000) {
				return wrongUse{errors.New(words.PlanKg(a.Kg))}
			}
			if !(sure >= 0 && sure <= 1) {
				return wrongUse{errors.New(words.PlanSure(sure))}
			}
			if !(blast >= 0 && blast <= 1e5) {
				return wrongUse{errors.New(words.PlanBlast(blast))}
			}
			if blast > 0 {
				a.Blast = plan.Metered(blast)
			}
			if a.Forge = entry.FuelKind(forge); forge != "" && !slices.Contains(entry.Choices[entry.FuelKind](), a.Forge) {
				return wrongUse{errors.New(words.PlanForge(forge))}
			}
			if seed >= 0 {
				a.Seed = entry.Some(seed)
			}
			h, err := theHouse(w, c)
			if err != nil {
				return err
			}
			if err := h.fill(&a, furnace, ore, w.clock().Wall); err != nil {
				return err
			}
			p := plan.Of(a)
			fs := foreseen(p)
			if bands {
				fs = widened(w, p, fs)
			}
			if c.json {
				return json.NewEncoder(w.out).Encode(planOf(p, fs))
			}
			_, err = fmt.Fprint(w.out, words.Plan(p, fs))
			return err
		})(flags)
	}}
}

// planExamples are invented.
func planExamples() []entry.Event {
	p := entry.Plan{
		Name: "autumn", Furnace: "Reed Hollow", Wanted: entry.Wanted{What: entry.BloomPiece, Mass: entry.Some(entry.Kilogram(4))}, Sure: entry.Some(entry.Share(0.5)), Day: "2026-05-09", Taken: "usual",
		Plans: []entry.ChargingPlan{{Name: "usual", Steps: []entry.RecipeStep{{Charges: 5, Parts: entry.Parts{
			{What: entry.Charcoal, Mass: entry.Some(entry.Kilogram(1.8))}, {What: entry.Ore, Mass: entry.Some(entry.Kilogram(1))}}}}}},
	}
	return []entry.Event{p, entry.PlanTicked{Plan: p.ID(), Item: "tools laid out", Done: true}}
}

// fill puts in what the house knows: furnace, ore, what is left, own smelts.
func (h household) fill(a *plan.Ask, furnace, ore string, now time.Time) error {
	if furnace == "" && len(h.Furnaces) == 1 {
		furnace = string(h.Furnaces[0].ID)
	}
	var built *house.Furnace
	switch f, ok := h.Furnace(furnace); {
	case ok:
		built = &f
	case strings.Contains(furnace, ","):
		name, sizes, _ := strings.Cut(furnace, ",")
		f, err := sized(strings.TrimSpace(name), sizes)
		if err != nil {
			return err
		}
		a.Furnace = f
	case furnace != "":
		return errors.New(words.NoSuchFurnace(furnace))
	}
	lot, err := h.ore(ore)
	if err != nil {
		return err
	}
	mix := ""
	if lot != nil {
		mix = lot.Mix
	}
	*a = a.FromHouse(h.State, built, lot, learn.HistoryOf(h.smelts, h.Pieces...).About("", now, mix))
	return nil
}

// ore finds the lot that is to be smelted: the one named, else the only one.
func (h household) ore(name string) (*house.Lot, error) {
	if name != "" {
		if l, ok := h.Lot(name); ok && (l.Of() == entry.LotOre || l.What == entry.Ore) {
			return &l, nil
		}
		return nil, errors.New(words.NoSuchOre(name))
	}
	var only *house.Lot
	for _, l := range h.Lots {
		if l.Of() != entry.LotOre {
			continue
		}
		if only != nil {
			return nil, nil
		}
		only = &l
	}
	return only, nil
}

func foreseen(p plan.Plan) []plan.Foreseen {
	fs := make([]plan.Foreseen, len(p.Ways))
	for i, w := range p.Ways {
		fs[i] = p.Foresee(w)
	}
	return fs
}

// widened solves each way in the plausible furnaces too, and says how far it is.
func widened(w world, p plan.Plan, fs []plan.Foreseen) []plan.Foreseen {
	for n := range plan.BandFurnaces {
		for i, way := range p.Ways {
			fs[i] = p.Widen(way, fs[i])
		}
		fmt.Fprintln(w.err, words.PlanSolving(n+1, plan.BandFurnaces))
	}
	return fs
}

// planJSON is a plan as JSON has it. What no amount of ore gives is null.
type planJSON struct {
	Wanted     wantedJSON               `json:"wanted"`
	Chance     *number                  `json:"chance"`
	ChanceNone number                   `json:"chance_none"`
	Smelts     []offerJSON              `json:"smelts"`
	Needs      map[string]*quantityJSON `json:"needs"`
	TooLittle  []tooLittleJSON          `json:"too_little"`
	Plans      []wayJSON                `json:"plans"`
	Day        []dayJSON                `json:"day"`
}

type wantedJSON struct {
	What string `json:"what"`
	Kg   number `json:"mass_kg"`
	Sure number `json:"sure"`
}

type offerJSON struct {
	N      int     `json:"n"`
	Ore    *number `json:"ore_kg"` // dry, of each
	Chance number  `json:"chance"`
}

type tooLittleJSON struct {
	Name string `json:"name"`
	Need number `json:"need_kg"`
	Left number `json:"left_kg"`
}

type wayJSON struct {
	Name     string                   `json:"name"`
	Steps    []stepJSON               `json:"steps"`
	Ore      number                   `json:"ore_kg"`
	Charcoal number                   `json:"charcoal_kg"`
	Hours    number                   `json:"hours"`
	Chance   number                   `json:"chance"`
	Fears    []string                 `json:"fears"`
	Figures  map[string]*quantityJSON `json:"figures"`
}

type stepJSON struct {
	Does     string `json:"does"`
	Charges  int    `json:"charges"`
	Charcoal number `json:"charcoal_kg"` // of each charge
	Ore      number `json:"ore_kg"`      // of each charge
	Slag     number `json:"seed_slag_kg,omitempty"`
	Minutes  number `json:"minutes"` // of each charge
}

type dayJSON struct {
	At   string `json:"at"` // since the wood fire was lit, h:mm
	What string `json:"what"`
}

func planOf(p plan.Plan, fs []plan.Foreseen) planJSON {
	j := planJSON{
		Wanted: wantedJSON{string(p.What), number(p.Kg), number(p.Sure)}, ChanceNone: number(p.None.P50),
		Smelts: []offerJSON{}, Needs: map[string]*quantityJSON{}, TooLittle: []tooLittleJSON{}, Plans: []wayJSON{}, Day: []dayJSON{},
	}
	for _, o := range p.Offers {
		one := offerJSON{N: o.Smelts, Chance: number(o.Chance)}
		if o.Ore > 0 {
			one.Ore = some(o.Ore)
		}
		j.Smelts = append(j.Smelts, one)
	}
	for _, n := range p.Needs {
		j.Needs[string(n.Need)] = neededOf(n)
	}
	for _, s := range p.TooShort {
		j.TooLittle = append(j.TooLittle, tooLittleJSON{string(s.Need), number(s.Take), number(s.Left)})
	}
	o, ok := p.Offer()
	if !ok {
		return j
	}
	j.Chance = some(o.Chance)
	for i, w := range p.Ways {
		j.Plans = append(j.Plans, wayOf(p, w, fs[i], o.Chance))
	}
	if w, ok := p.Usual(); ok {
		for _, m := range p.Day(w) {
			j.Day = append(j.Day, dayJSON{words.AfterLight(m.After), words.OfTheDay(m)})
		}
	}
	return j
}

func neededOf(n plan.Needed) *quantityJSON {
	q := &quantityJSON{Unit: n.Unit, Basis: string(n.Basis)}
	if !n.Known {
		q.Basis = string(entry.BasisUnknown)
		return q
	}
	q.P50 = some(n.Band.P50)
	if !n.Point {
		q.P10, q.P90 = some(n.Band.P10), some(n.Band.P90)
	}
	return q
}

func banded(b physics.Band, unit string, basis entry.Basis) *quantityJSON {
	return &quantityJSON{some(b.P10), some(b.P50), some(b.P90), unit, string(basis)}
}

func wayOf(p plan.Plan, w plan.Charging, f plan.Foreseen, chance float64) wayJSON {
	hours := p.Hours(w)
	j := wayJSON{
		Name: w.Name, Steps: []stepJSON{}, Ore: number(w.Ore), Charcoal: number(w.Charcoal), Hours: number(hours.P50), Chance: number(chance),
		Fears: []string{}, Figures: map[string]*quantityJSON{"hearth_temperature": nil, "hours": banded(hours, "h", p.Basis), "charcoal": banded(p.CharcoalOf(w), "kg", p.Basis), "bloom": banded(p.BloomOf(w), "kg", entry.BasisEstimated)},
	}
	for _, s := range w.Steps {
		j.Steps = append(j.Steps, stepJSON{string(s.Does), s.Charges, number(s.Charcoal), number(s.Ore), number(s.Slag), number(s.Minutes)})
	}
	for _, fear := range append(w.Fears, f.Fears...) {
		j.Fears = append(j.Fears, words.PlanFear(fear))
	}
	if f.Known {
		c := func(k float64) *number { return some(physics.ToCelsius(k)) }
		b := f.Band()
		j.Figures["hearth_temperature"] = &quantityJSON{c(b.P10), c(b.P50), c(b.P90), "C", string(entry.BasisGuessed)}
	}
	return j
}
