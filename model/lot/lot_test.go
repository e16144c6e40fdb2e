package lot

import (
	"math"
	"testing"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/ore"
)

var day = time.Date(2026, 5, 1, 8, 0, 0, 0, time.UTC)

// stored folds a house of these events, an hour apart.
func stored(evs ...entry.Event) (house.State, []house.Line) {
	var j house.Journal
	for i, ev := range evs {
		at := day.Add(time.Duration(i) * time.Hour)
		j, _ = j.Add(entry.Entry{Version: 1, Stream: entry.House, Happened: at, Kept: at, Boot: "b", Mono: time.Duration(i) * time.Hour, Event: ev})
	}
	return j.Fold(nil), j.Lines()
}

func kg(v float64) entry.Maybe[entry.Kilogram] { return entry.Some(entry.Kilogram(v)) }

func oreLot(name string, water float64) entry.LotStored {
	l := entry.Lot{Name: name, What: entry.Ore, Material: entry.LotOre}
	if water >= 0 {
		l.Moisture = entry.Some(entry.Share(water / (1 - water)))
	}
	return entry.LotStored{Lot: l}
}

func roasting(in, out float64) entry.Deed {
	return entry.Deed{Does: entry.Roasted, In: []entry.Amount{{Lot: "name:dug", Mass: kg(in)}}, Out: []entry.Amount{{Lot: "name:roasted", Mass: kg(out)}}}
}

// 46 kg of ore with 31 % of water lose 38 to 39 % when roasted through: the free water and
// the 10.14 % bound in FeOOH (formula), with up to 1.5 % of peat. 33 kg left are 28 % lost;
// a measured bog ore went from 4.8 to 2.95 kg (L'Anse aux Meadows), 38.5 %.
func TestRoastedThrough(t *testing.T) {
	for _, c := range []struct {
		in, out float64
		is      Through
	}{{46, 33, HalfRoasted}, {4.8, 2.95, RoastedThrough}, {46, 24, LostMore}} {
		h, lines := stored(oreLot("dug", 0.31), oreLot("roasted", -1), roasting(c.in, c.out))
		r, ok := RoastOf(h, lines, "name:roasted")
		if !ok || r.Through() != c.is || math.Abs(r.Expected[0]-0.380) > 0.001 || math.Abs(r.Expected[1]-0.390) > 0.001 {
			t.Errorf("%v to %v: %+v %v, want %v", c.in, c.out, r, r.Through(), c.is)
		}
	}
	if h, lines := stored(oreLot("dug", -1), oreLot("roasted", -1), roasting(46, 33)); true {
		if _, ok := RoastOf(h, lines, "name:roasted"); ok {
			t.Error("a roast is judged whose water nobody knows")
		}
	}
}

func TestIronOfALot(t *testing.T) {
	h, _ := stored(oreLot("dug", 0.3), oreLot("roasted", 0), roasting(46, 33))
	dug, _ := h.Lot("dug")
	roasted, _ := h.Lot("roasted")
	if s := IronShare(dug); s.Band != ore.Raw || s.Basis != entry.BasisAssumed {
		t.Errorf("dug: %+v", s)
	}
	if s := IronShare(roasted); s.Band != ore.Roasted {
		t.Errorf("roasted: %+v", s)
	}
	if s := ToBeHad(roasted); s.Basis != entry.BasisGuessed || math.Abs(s.P10-0.20) > 0.01 || math.Abs(s.P90-0.45) > 0.01 {
		t.Errorf("to be had: %+v", s)
	}
	if Iron(roasted).P50 != 0 {
		t.Error("kilograms of iron that nobody measured")
	}
	h, _ = stored(oreLot("dug", 0.3), oreLot("roasted", 0), roasting(46, 33), entry.Assay{Lot: "name:roasted", Basis: entry.AsRoasted, Parts: map[string]entry.Assayed{"Fe2O3": {Percent: 74}, "SiO2": {Percent: 14}}})
	roasted, _ = h.Lot("roasted")
	if s := IronShare(roasted); s.Basis != entry.BasisMeasured || math.Abs(s.P50-0.5176) > 0.001 { // 0.6994 of Fe2O3
		t.Errorf("assayed: %+v", s)
	}
	if b := Iron(roasted); math.Abs(b.P50-17.08) > 0.1 {
		t.Errorf("%+v kg", b)
	}
	// More iron than magnetite holds is nothing to reckon with.
	h, _ = stored(oreLot("roasted", 0), entry.Assay{Lot: "name:roasted", Parts: map[string]entry.Assayed{"Fe": {Percent: 89}}})
	roasted, _ = h.Lot("roasted")
	if s := IronShare(roasted); s.Basis == entry.BasisMeasured {
		t.Errorf("89 %%: %+v", s)
	}
}

// The printed worked case of FAO Forestry Paper 41 (1983, from memory): 100 kg of wood, 20
// of them water, to 10 kg of charcoal: 10 and 12.5 %; without 5 % of fines 9.5 and 11.9.
func TestYieldOfACharcoalBurn(t *testing.T) {
	for out, want := range map[float64][2]float64{10: {0.10, 0.125}, 9.5: {0.095, 0.11875}} {
		h, lines := stored(
			entry.LotStored{Lot: entry.Lot{Name: "alder", Material: entry.LotWood, Moisture: entry.Some(entry.Share(0.25))}},
			entry.Deed{Does: entry.Burnt, In: []entry.Amount{{Lot: "name:alder", Mass: kg(100)}}, Out: []entry.Amount{{Lot: "name:coal", Mass: kg(out)}}})
		b, ok := BurnOf(h, lines[1].Event.(entry.Deed))
		if !ok || !b.Dry || math.Abs(b.OnWet-want[0]) > 1e-9 || math.Abs(b.OnDry-want[1]) > 1e-9 {
			t.Errorf("%v: %+v %v", out, b, ok)
		}
	}
}

// Brands and fines are no charcoal: of 100 kg of wood with 10 kg of charcoal, half a kg of it
// sieved out, the printed case has 9.5 and 11.9 % (FAO Forestry Paper 41, 1983, from memory).
func TestBrandsAndFinesAreNoCharcoal(t *testing.T) {
	h, lines := stored(
		entry.LotStored{Lot: entry.Lot{Name: "alder", Material: entry.LotWood, Moisture: entry.Some(entry.Share(0.25))}},
		entry.LotStored{Lot: entry.Lot{Name: "coal", Material: entry.LotCharcoal}},
		entry.LotStored{Lot: entry.Lot{Name: "brands", Material: entry.LotWood}},
		entry.LotStored{Lot: house.AsFines(entry.Lot{Name: "fines", Material: entry.LotCharcoal})},
		entry.Deed{Does: entry.Burnt, In: []entry.Amount{{Lot: "name:alder", Mass: kg(100)}}, Out: []entry.Amount{{Lot: "name:coal", Mass: kg(9.5)}, {Lot: "name:brands", Mass: kg(4)}, {Lot: "name:fines", Mass: kg(0.5)}}})
	b, ok := BurnOf(h, lines[4].Event.(entry.Deed))
	if !ok || math.Abs(b.OnWet-0.095) > 1e-9 || math.Abs(b.OnDry-0.11875) > 1e-9 || b.Brands != 4 || b.Fines != 0.5 {
		t.Errorf("%+v %v", b, ok)
	}
	if left, _, _ := h.Left(entry.LotCharcoal); math.Abs(left.Kg-9.5) > 1 {
		t.Errorf("%.2f kg of charcoal to be charged", left.Kg)
	}
}

func TestWhatHelpsMost(t *testing.T) {
	h, _ := stored(oreLot("a", -1), oreLot("b", 0.1), oreLot("c", 0.1),
		entry.Deed{Does: entry.Dug, Out: []entry.Amount{{Lot: "name:a", Some: true}, {Lot: "name:b", Mass: kg(5)}, {Lot: "name:c", Mass: kg(5)}}},
		entry.Assay{Lot: "name:c", Basis: entry.AsDug, Parts: map[string]entry.Assayed{"Fe": {Percent: 40}}})
	for name, want := range map[string]Help{"a": HelpWeigh, "b": HelpAssay, "c": NoHelp} {
		if l, _ := h.Lot(name); Helps(l) != want {
			t.Errorf("%s: %q, want %q", name, Helps(l), want)
		}
	}
}

// Signs move the iron that is assumed, within what is usual of such ore, and no other: dark red,
// sticky and heavy ore is the best, up to 49 % iron, black, loose and earthy ore is poor (Norges
// land og folk, Hedemarkens amt 1).
func TestSignsMoveWhatIsAssumed(t *testing.T) {
	of := func(more ...entry.Event) Share {
		h, _ := stored(more...)
		l, _ := h.Lot("dug")
		return IronShare(l)
	}
	with := func(signs ...entry.OreSign) entry.LotStored {
		l := oreLot("dug", 0.3)
		l.Lot.Signs = signs
		return l
	}
	usual := of(oreLot("dug", 0.3))
	best := of(with(entry.SignDarkRed, entry.SignSticky, entry.SignHeavy, entry.SignMagnetic))
	poor := of(with(entry.SignBlack, entry.SignGritty))
	middling := of(with(entry.SignBrown))
	if best.P50 <= usual.P50+0.05 || best.P50 > 0.49 || best.P10 <= usual.P10 || best.P90 != usual.P90 || best.Basis != entry.BasisAssumed {
		t.Errorf("the best %+v, usual %+v", best, usual)
	}
	if poor.P50 >= usual.P50-0.05 || poor.P90 >= usual.P90 || poor.P10 != usual.P10 || poor.P50 <= poor.P10 {
		t.Errorf("poor %+v", poor)
	}
	if middling != usual {
		t.Errorf("middling %+v", middling)
	}
	assayed := entry.Assay{Lot: "name:dug", Basis: entry.AsDried, Parts: map[string]entry.Assayed{"Fe": {Percent: 41}}}
	if s := of(with(entry.SignBlack), assayed); s.Basis != entry.BasisMeasured || s.P50 < 0.40 {
		t.Errorf("a sign moved an assay: %+v", s)
	}
}

// Ore with so much silica that slag, wall and ash take all its iron even at a reducible-iron
// index of 2 cannot pay for its slag; the usual one can.
func TestAnOreThatCannotPayItsSlag(t *testing.T) {
	pays := func(fe2o3, sio2 entry.Percent) bool {
		h, _ := stored(oreLot("dug", 0.3), entry.Assay{Lot: "name:dug", Basis: entry.AsDried, Parts: map[string]entry.Assayed{"Fe2O3": {Percent: fe2o3}, "SiO2": {Percent: sio2}}})
		l, _ := h.Lot("dug")
		_, _, so := CannotPay(l)
		return !so
	}
	if !pays(74, 14) || pays(30, 60) {
		t.Errorf("74/14 pays: %v, 30/60 pays: %v", pays(74, 14), pays(30, 60))
	}
}

// Roasted ore that got rain on it is not charged like that; ore as dug is roasted first.
func TestDampToCharge(t *testing.T) {
	for _, c := range []struct {
		water float64
		roast bool
		damp  bool
	}{{0.12, true, true}, {0.03, true, false}, {0.3, false, false}} {
		evs := []entry.Event{oreLot("dug", 0.3), oreLot("roasted", c.water)}
		if c.roast {
			evs = append(evs, roasting(46, 33))
		}
		h, _ := stored(evs...)
		l, _ := h.Lot("roasted")
		if DampToCharge(l) != c.damp {
			t.Errorf("%v: %v", c, DampToCharge(l))
		}
	}
}
