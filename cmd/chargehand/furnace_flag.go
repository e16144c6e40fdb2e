package main

import (
	"errors"
	"strconv"
	"strings"

	"chargehand/model/entry"
	"chargehand/model/fold"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/tui"
)

// furnaceOf reads --furnace: the name of a furnace of the house or a starter,
// or a name with its sizes in cm ("Reed Hollow,bore=25,stack=50,rim=55").
func furnaceOf(s string, book *persist.Book) (entry.Furnace, error) {
	name, sizes, given := strings.Cut(s, ",")
	name = strings.TrimSpace(name)
	if given {
		return sized(name, sizes)
	}
	built, err := houseFurnaces(book)
	if err != nil {
		return entry.Furnace{}, err
	}
	for _, st := range tui.Starters() {
		built = append(built, st.Furnace)
	}
	for _, f := range built {
		if strings.EqualFold(f.Name, name) {
			return f, nil
		}
	}
	return entry.Furnace{Name: name}, nil
}

// houseFurnaces are the furnaces kept in the house, the newest first.
func houseFurnaces(book *persist.Book) ([]entry.Furnace, error) {
	entries, err := book.Entries(entry.House)
	if errors.As(err, new(*persist.NoStreamError)) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var built []entry.Furnace
	for _, l := range fold.InForce(entries, fold.All) {
		if ev, ok := l.Event.(entry.FurnaceBuilt); ok {
			built = append([]entry.Furnace{ev.Furnace}, built...)
		}
	}
	return built, nil
}

func sized(name, sizes string) (entry.Furnace, error) {
	f := entry.Furnace{Name: name}
	for part := range strings.SplitSeq(sizes, ",") {
		key, value, _ := strings.Cut(strings.TrimSpace(part), "=")
		v, err := strconv.ParseFloat(value, 64)
		if err != nil || !(v >= 0) || v > 10000 {
			return f, wrongUse{errors.New(words.BadFurnace(part))}
		}
		cm := entry.Some(entry.Centimetre(v))
		switch key {
		case "bore":
			f.Bore = cm
		case "top":
			f.BoreTop = cm
		case "stack":
			f.Stack = cm
		case "rim":
			f.Rim = cm
		case "base":
			f.TuyereBase = cm
		case "altitude":
			f.Altitude = entry.Some(entry.Metre(v))
		default:
			return f, wrongUse{errors.New(words.BadFurnace(part))}
		}
	}
	return f, nil
}
