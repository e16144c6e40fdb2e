package rule_test

import (
	"testing"

	"chargehand/model/entry"
	"chargehand/model/rule"
)

// A dead blower makes no charge late and misses no entry: nothing burns without
// blast (common practice; the charge was due after ten minutes of blast). The
// last charge is that of minute 90; late is half as long again as usual.
func TestNoChargeIsLateForABlastThatWasOff(t *testing.T) {
	stopped := func(from, to float64) *day {
		return steady().with(from, entry.Blast{State: entry.BlastOff}).with(to, entry.Blast{State: entry.BlastOn})
	}
	scenes := map[rule.ID][]scene{
		rule.ChargeOverdue: {
			{name: "eleven minutes without blast", day: stopped(92, 103), to: 115},
			{name: "and fifteen with it", day: stopped(92, 103), to: 117, raised: 116, says: "27 min since the last, 11 min of it without blast; usual is 10 min"},
			{name: "off already as it was charged", day: stopped(88, 94), to: 110, raised: 109, says: "20 min since the last, 4 min of it without blast; usual is 10 min"},
			{name: "off twice", day: stopped(92, 95).with(97, entry.Blast{State: entry.BlastOff}).with(104, entry.Blast{State: entry.BlastOn}), to: 114},
			{name: "keyed off twice", day: stopped(92, 92).with(93, entry.Blast{State: entry.BlastOff}).with(96, entry.Blast{State: entry.BlastOff}).with(103, entry.Blast{State: entry.BlastOn}), to: 114},
			{name: "off before that charge only", day: stopped(82, 86), to: 106, raised: 105},
		},
		rule.EntryMissing: {
			{name: "half an hour without blast", day: stopped(91, 121), to: 130},
			{name: "and twenty-five minutes with it", day: stopped(91, 121), to: 146, raised: 145, says: "56 min since the last, 30 min of it without blast; usual is 10 min"},
		},
	}
	for _, row := range rule.Table {
		for _, s := range scenes[row.ID] {
			t.Run(string(row.ID)+"/"+s.name, func(t *testing.T) { s.check(t, row) })
		}
	}
}

// An hour without blast raises what tells of it and nothing else: no rule takes it for
// an hour of burning. When the blast is back and charges go in as before, nothing
// stands but the question after the top gas until it is answered.
func TestAnHourWithoutBlastRaisesNothingElse(t *testing.T) {
	full := charge(coal(1.9), ore(1))
	d := steady().with(92, entry.Blast{State: entry.BlastOff}).with(152, entry.Blast{State: entry.BlastOn}).with(153, look(entry.AtTopGas, entry.TopGasAlight))
	for minute := 160.0; minute <= 260; minute += 10 {
		d.key(minute, full)
	}
	for _, w := range d.walk(265) {
		if w.Rule != rule.BlastLost {
			t.Errorf("%s is raised at %v", w.Rule, w.Onset)
		}
	}
	// And a charge that is late afterwards is late by its own time.
	late := steady().with(92, entry.Blast{State: entry.BlastOff}).with(152, entry.Blast{State: entry.BlastOn}).with(153, look(entry.AtTopGas, entry.TopGasAlight)).with(160, full)
	var raised []rule.ID
	for _, w := range late.walk(176) {
		if w.Rule != rule.BlastLost {
			raised = append(raised, w.Rule)
		}
	}
	if len(raised) != 1 || raised[0] != rule.ChargeOverdue {
		t.Errorf("a charge late after the stop raises %v", raised)
	}
}
