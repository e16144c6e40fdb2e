package words

import (
	"strconv"
	"strings"

	"chargehand/model/columns"
	"chargehand/model/entry"
	"chargehand/model/shelf"
	modelwords "chargehand/model/words"
)

// Logs that other people kept, taken in from a file.
const (
	LogsTitle        = "a log from a file"
	DoLogs           = "a log from a file"
	ShortLogs        = "log from a file"
	DoOpenLog        = "open the file; in one, say what a column is"
	DoKeepLog        = "keep it as a smelt"
	DoNotRead        = "do not read this column"
	DoBlanks         = "blanks of ore and charcoal: none, or not recorded"
	DoTypePath       = "type where the file is"
	DoFolderAbove    = "the folder above"
	ShortOpenLog     = "open"
	ShortTypePath    = "type a path"
	ShortFolderAbove = "folder above"
	ShortKeepLog     = "keep it as a smelt"
	ShortWhatColumn  = "what this column is"
	ShortNotRead     = "do not read it"
	ShortBlanks      = "blanks"

	LogsSay       = "A log that somebody else kept, saved from a spreadsheet as .csv, .tsv or .txt. Nothing is kept before you say so."
	LogBeingRead  = "being read"
	NoLogHere     = "No file here that could be a log (.csv, .tsv, .txt): left goes to the folder above, p types where it is."
	NothingAbove  = "there is no folder above this one"
	OpenALogFirst = "enter opens a file first"
	LeaveLogFirst = "esc leaves this file first"
	PathOfLog     = "where the file is"
	LogName       = "name"
	LogSize       = "size"
	LogChanged    = "changed"
	AFolder       = "folder"

	ColumnHead   = "their column"
	ColumnFirst  = "what stands in it"
	ColumnReadAs = "is read as"
	ColumnWhy    = "why"
	AsSaid       = "as you said"
	NotReadLine  = "not read"

	NoColumnIsTime = "No column is the time yet: go to the one that is, and press enter."
	OnlyTheTime    = "Only the time is read yet: go to a column of charcoal, ore or what was done, and press enter."

	LogFurnace     = "which furnace"
	LogDay         = "which day, as 2026-05-09"
	LogBegin       = "time of day at its start, as 09:30"
	LogBucketKg    = "a bucket of charcoal weighs"
	LogScoopKg     = "a scoop of ore weighs"
	LogColumnsName = "keep these columns for the next such log, called"
	BlankAtNought  = "blank: not known, it then begins at 00:00"
	BlankNotKept   = "blank: not kept"
	BadLogDay      = "write the day as 2026-05-09, or leave it blank"
	BadLogBegin    = "write the time as 09:30, or leave it blank"
)

// columnIs is what a column is, in a list.
var columnIs = map[columns.Meaning]string{
	columns.Clock: "time", columns.Date: "day", columns.Event: "what was done", columns.Charcoal: "charcoal, weighed", columns.Measures: "buckets of charcoal",
	columns.Ore: "ore, weighed", columns.Scoops: "scoops of ore", columns.Air: "blast", columns.Temp: "temperature", columns.Height: "burden above the tuyere", columns.Note: "a note",
}

// ColumnIs is what a column is.
func ColumnIs(m columns.Meaning) string { return columnIs[m] }

// unitSaid is a unit in a list, where its sign does not say enough.
var unitSaid = map[string]string{
	"lb": "pounds, lb", "oz": "ounces, oz", "g": "grams, g", "F": "Fahrenheit, F", "C": "Celsius, C", "K": "kelvin, K",
	"in": "inches, in", "ft": "feet, ft", "cfm": "cubic feet a minute, cfm", "m3/h": "cubic metres an hour, m3/h", "m3/min": "cubic metres a minute, m3/min",
}

// ColumnUnit is a unit of a column, or how it is written.
func ColumnUnit(m columns.Meaning, unit string) string {
	switch m {
	case columns.Clock:
		return map[string]string{"": "time of day, as 13:05 or 1:05 pm", "12h": "time of day, as 1:05 without am or pm", "min": "minutes from the start", "h": "hours from the start", "day": "share of a day, as 0.3333 for 8:00"}[unit]
	case columns.Date:
		return map[string]string{"": "as 2026-05-09", "d/m/y": "day first: 9/5/2026 is 9 May", "m/d/y": "month first: 9/5/2026 is 5 September"}[unit]
	}
	if said, ok := unitSaid[unit]; ok {
		return said
	}
	return unit
}

// ColumnSays is what a column is read as, with its unit.
func ColumnSays(m columns.Meaning, unit string) string {
	switch {
	case m == "":
		return NotReadLine
	case m == columns.Clock:
		return map[string]string{"": "time of day", "12h": "time, 1:05 is 13:05", "min": "minutes from start", "h": "hours from start", "day": "time, as a share of a day"}[unit]
	case m == columns.Date:
		return map[string]string{"": "day", "d/m/y": "day, day first", "m/d/y": "day, month first"}[unit]
	case unit == "":
		return columnIs[m]
	}
	word, _, _ := strings.Cut(columnIs[m], ",")
	return word + ", " + unit
}

// HeadOf is the name of a column, or that it has none.
func HeadOf(head string) string {
	if head == "" {
		return "(no name)"
	}
	return head
}

// WhyOf is what a guess rests on.
func WhyOf(w columns.Why) string {
	return [...]string{
		columns.NotKnown: "not guessed", columns.ByName: "by its name", columns.ByFigures: "by its figures", columns.AsKept: "as last time",
		columns.Twice: "taken already", columns.OtherUnit: "unit not known", columns.RunsUp: "a running sum",
	}[w]
}

// WhatIsColumn asks what a column is, InWhichUnit in which unit.
func WhatIsColumn(head string) string { return "what is " + strconv.Quote(HeadOf(head)) }

// InWhichUnit asks for the unit.
func InWhichUnit(head string) string { return strconv.Quote(HeadOf(head)) + " is written in" }

// ColumnSet says what a column now is.
func ColumnSet(head string, m columns.Meaning, unit string) string {
	return HeadOf(head) + ": " + ColumnSays(m, unit)
}

// ColumnGivesWay says that another column was the same until now.
func ColumnGivesWay(head string) string { return HeadOf(head) + " was that and is not read now" }

// ColumnLeft says that nothing is read from a column, and why.
func ColumnLeft(head string, w columns.Why) string {
	said := HeadOf(head) + ": not read"
	switch w {
	case columns.Twice:
		said += "; its name says what another column is already"
	case columns.OtherUnit:
		said += "; its name says a unit that cannot be read here"
	case columns.RunsUp:
		said += "; its name says that it sums up another column"
	}
	return said + "; enter says what it is"
}

// BlanksAre says what blanks are taken for.
func BlanksAre(none bool) string {
	if none {
		return "a blank of ore or charcoal in a charge: none"
	}
	return "a blank of ore or charcoal in a charge: not recorded"
}

// BlanksStand says what blanks leave open.
func BlanksStand(n int) string {
	charges := "in 1 charge"
	if n > 1 {
		charges = "in " + strconv.Itoa(n) + " charges"
	}
	return "ore or charcoal blank " + charges + ": its sum is not known; z takes it as none"
}

// LogHolds sums up what was read.
func LogHolds(u modelwords.Units, t columns.Table, s shelf.Summary) string {
	rows := strconv.Itoa(t.Rows) + " rows"
	if t.Rows == 1 {
		rows = "1 row"
	}
	kg := func(what string, known bool, said string) string {
		if known {
			return what + " " + said
		}
		return what + " not known"
	}
	return strings.Join([]string{rows, Charges(s.Charges), kg("charcoal", s.Charcoal.Known, u.Kg(s.Charcoal.Value)), kg("ore", s.Ore.Known, u.Kg(s.Ore.Value)), Lasted(s.Lasted)}, " · ")
}

// TotalOf is what a column of numbers holds.
func TotalOf(u modelwords.Units, t columns.Total) string {
	n := strconv.Itoa(t.N) + " numbers"
	if t.N == 1 {
		n = "1 number"
	}
	said := t.Theirs + ": " + n
	if strings.HasSuffix(t.Ours, "_kg") {
		said += ", together " + u.Kg(entry.Kilogram(t.Sum))
	}
	said += ", the middle one " + amountOf(u, t.Ours, t.Middle)
	if t.Beyond {
		said += ": " + doubtOf(t)
	}
	return said
}

// TotalDoubt doubts a column.
func TotalDoubt(u modelwords.Units, t columns.Total) string {
	return "! " + t.Theirs + ": " + amountOf(u, t.Ours, t.Middle) + " is " + doubtOf(t)
}

func doubtOf(t columns.Total) string {
	if t.Doubt == "" {
		return "hardly usual for a small furnace; is it that column?"
	}
	return "hardly usual for a small furnace; is it in " + t.Doubt + "?"
}

// amountOf is a number of a column of our table in the person's unit.
func amountOf(u modelwords.Units, column string, v float64) string {
	switch column {
	case "charcoal_kg", "ore_kg":
		return u.Value(v, "kg", 2)
	case "air_l_min":
		return u.Value(v, "l/min", 0)
	case "temp_c":
		return u.Value(v, "°C", 0)
	case "height_cm":
		return u.Value(v, "cm", 0)
	}
	return modelwords.Number(v, 1)
}

// ColumnsNotRead names what was not read.
func ColumnsNotRead(names []string) string { return "not read: " + strings.Join(names, ", ") }

// WordsInNote names words of what was done that are none of ours.
func WordsInNote(said []string) string {
	return "kept in the note: " + strings.Join(said, ", ")
}

// rowIs is what a column of our table is called in a row that is shown.
var rowIs = map[string]string{"charcoal_kg": "charcoal %s", "ore_kg": "ore %s", "air_l_min": "blast %s", "temp_c": "%s",
	"height_cm": "%s above the tuyere", "measures": "%s buckets", "scoops": "%s scoops", "note": "note: %s"}

// LogRow is a row as it is read, in the person's units.
func LogRow(u modelwords.Units, r columns.Row) string {
	var day, clock, event string
	var rest []string
	for _, c := range r.Ours {
		switch c.Column {
		case "date":
			day = c.Text
		case "clock":
			clock = c.Text
			if strings.Count(clock, ":") == 2 {
				clock = strings.TrimSuffix(clock, ":00")
			}
		case "event":
			event = c.Text
		default:
			text := c.Text
			if v, err := strconv.ParseFloat(text, 64); err == nil && c.Column != "note" {
				text = amountOf(u, c.Column, v)
			}
			rest = append(rest, strings.Replace(rowIs[c.Column], "%s", text, 1))
		}
	}
	if event == "note" && len(rest) > 0 {
		event = ""
	} else if len(rest) > 0 {
		event += "  "
	}
	return "line " + strconv.Itoa(r.Line) + "  " + strings.TrimSpace(day+" "+clock) + "  " + event + strings.Join(rest, ", ")
}

// Bytes is the size of a file.
func Bytes(n int64) string {
	if n < 1000 {
		return strconv.FormatInt(n, 10) + " B"
	}
	return modelwords.Number(float64(n)/1000, 0) + " kB"
}

// LogNotYet says why nothing is kept yet.
func LogNotYet(why string) string { return "nothing kept: " + why }

// LogTaken says what was kept.
func LogTaken(smelt string, entries int) string {
	return smelt + " taken in, " + strconv.Itoa(entries) + " entries"
}
