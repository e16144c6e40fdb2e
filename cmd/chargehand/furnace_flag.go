package main

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	"chargehand/model/house"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/twin"
	"chargehand/tui"
)

// furnaceOf reads --furnace: the name of a furnace of the house or a starter,
// or a name with its sizes in cm ("Reed Hollow,bore=25,stack=50,rim=55").
func furnaceOf(s string, book *persist.Book, now time.Time) (entry.Furnace, error) {
	name, sizes, given := strings.Cut(s, ",")
	name = strings.TrimSpace(name)
	if given {
		return sized(name, sizes)
	}
	built, err := houseFurnaces(book, now)
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

// houseFurnaces are the furnaces of the house as they stand now, the newest first.
func houseFurnaces(book *persist.Book, now time.Time) ([]entry.Furnace, error) {
	entries, err := book.Entries(entry.House)
	if errors.As(err, new(*twin.NoStreamError)) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var built []entry.Furnace
	for _, f := range house.Fold(entries, nil, now).Furnaces {
		built = append(built, f.Last().Furnace)
	}
	slices.Reverse(built)
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
