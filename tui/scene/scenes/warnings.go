package scenes

import (
	"chargehand/model/entry"
	"chargehand/model/rule"
)

// Longest holds evidence as long as it can well get: every value any rule
// names, in its unit.
func Longest(id rule.ID) rule.Evidence {
	e := rule.Evidence{
		{Name: "seen", Word: entry.SlagGlassy}, {Name: "where", Word: string(entry.AtSound)}, {Name: "measure", Word: "wheelbarrow, heaped"}, {Name: "what", Word: string(entry.Charcoal)},
		{Name: "since", Number: 1439, Unit: rule.Minutes}, {Name: "usual", Number: 128, Unit: rule.Minutes}, {Name: "apart", Number: 128, Unit: rule.Minutes},
		{Name: "before", Number: 128, Unit: rule.Minutes}, {Name: "last", Number: 128, Unit: rule.Minutes}, {Name: "by", Number: -1439, Unit: rule.Minutes},
		{Name: "height", Number: 118, Unit: rule.Centimetres}, {Name: "mark", Number: 118, Unit: rule.Centimetres}, {Name: "expected", Number: 118, Unit: rule.Centimetres},
		{Name: "ratio", Number: 11.25, Unit: rule.Ratio}, {Name: "plan", Number: 11.25, Unit: rule.Ratio}, {Name: "factor", Number: 11.25, Unit: rule.Count},
		{Name: "number", Number: 128, Unit: rule.Count}, {Name: "left", Number: 128.5, Unit: rule.Kilograms}, {Name: "needed", Number: 128.5, Unit: rule.Kilograms},
		{Name: "slag", Number: 28.55, Unit: rule.Kilograms}, {Name: "hearth", Number: 1145, Unit: rule.Degrees}, {Name: "least", Number: 1150, Unit: rule.Degrees},
		{Name: "iron", Number: 15, Unit: rule.Percent}, {Name: "top", Number: 1028, Unit: rule.Degrees}, {Name: "for", Number: 20, Unit: rule.Minutes},
		{Name: "carbon", Number: 0.0195, Low: 0.0002, High: 0.04, Unit: rule.CarbonShare}, {Name: "protects", Word: "does not protect"}, {Name: "pressure", Number: 2500, Unit: rule.Pascals}, {Name: "clear", Number: 1200, Unit: rule.Pascals},
		{Name: "slag", Number: 28.55, Unit: rule.Kilograms}, {Name: "weighed", Number: 28.55, Unit: rule.Kilograms}, {Name: "believed", Number: 28.55, Unit: rule.Kilograms},
	}
	e = append(e, rule.Value{Name: "each", Number: 128, Unit: rule.Minutes}, rule.Value{Name: "fall", Number: 128, Unit: rule.Kelvin},
		rule.Value{Name: "most", Number: 11.25, Unit: rule.Ratio})
	for i := range e {
		if e[i].Unit == rule.Degrees && e[i].Name != "least" {
			e[i].Low, e[i].High = e[i].Number-150, e[i].Number+100
		}
	}
	off, band := rule.Minutes, rule.Minutes
	switch id {
	case rule.AirWeak, rule.AirStrong, rule.AirOdd:
		var air rule.Evidence
		for _, name := range []string{"air", "least", "most"} {
			air = append(air, rule.Value{Name: name, Number: 11.25, Unit: rule.PerArea})
		}
		e = append(air, e...)
	case rule.MeasureDoubtful:
		off = rule.Percent
	case rule.HangUp, rule.Slip, rule.StackLow:
		band = rule.Centimetres
	case rule.MeterOdd:
		band = rule.Count
	}
	return append(e, rule.Value{Name: "off", Number: 1439, Unit: off},
		rule.Value{Name: "low", Number: 118, Unit: band}, rule.Value{Name: "high", Number: 128, Unit: band})
}

// Worst are the warnings of every rule with the longest evidence, acknowledged
// and not the only one. A cold hearth is read or seen; a charge is waited for
// with the blast on, or partly without.
func Worst(at func(rule.ID) rule.Warning) [][]rule.Warning {
	var all [][]rule.Warning
	for _, row := range rule.Table {
		w := at(row.ID)
		w.Acknowledged = true
		all = append(all, []rule.Warning{w, w})
		if row.ID == rule.HearthCold {
			w.Evidence = append(rule.Evidence{{Name: "fire", Number: 1145, Unit: rule.Degrees}, {Name: "least", Number: 1150, Unit: rule.Degrees}}, w.Evidence...)
			all = append(all, []rule.Warning{w, w})
		}
		if row.ID == rule.ChargeOverdue || row.ID == rule.EntryMissing {
			w.Evidence = append(rule.Evidence{{Name: "unblown", Number: 1439, Unit: rule.Minutes}}, w.Evidence...)
			all = append(all, []rule.Warning{w, w})
		}
	}
	return all
}
