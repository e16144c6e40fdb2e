package words

import (
	"strings"
)

// Assumed is what a plan takes for granted, in the order of what helps most, each with
// what replaces it (the figures stand beside their sources in model/plan).
var Assumed = []struct {
	Text      string
	OfFurnace bool
}{
	{"bucket 1.8 kg within 15 %: weigh a bucket, k at the stores", false},
	{"blast as advised for the bore: the bag test, a at the furnaces", true},
	{"bore 25, 50 cm above the tuyere: measure, n at the furnaces", true},
	{"charcoal with 5 to 15 % water: dry a sample, m at the stores", false},
	{"ore of 35 to 60 % iron: an assay, a at the stores", false},
	{"ore of about 10 mm: two sieves, o at the stores", false},
	{"wall 5 cm: measure, w at the furnaces", true},
	{"wood fire 1.5 to 2.5 h, 8 to 16 min a bucket: your own smelts", false},
	{"first ore after 2 to 11 buckets, burn-down 27 to 35 min: your own smelts", false},
}

// BeforeLighting are the lines that are usual before a fire is lit.
var BeforeLighting = []string{
	"somebody is named who closes", "water and a burn kit at hand", "nobody alone, all know where to stand", "carbon monoxide alarm on",
	"ore and charcoal dry and under cover", "bucket and scoop weighed", "blower and a spare tried", "tools for the pull laid out", "fire ban and wind looked up",
}

// Tick is a line of a list, done or not.
func Tick(done, open string, is bool, line string) string {
	if is {
		return done + " " + line
	}
	return open + " " + line
}

// LineAdded says so.
func LineAdded(text string) string { return "added: " + short(text) }

// The words for the wall.
const (
	WallTitle  = "on the wall page of the sheet, kept from smelt to smelt"
	WallPrints = "chargehand sheet --out FILE prints the paper log and the page for the wall"
)

// WallSays is a question of the wall page with what was keyed to it.
func WallSays(asks, says string) string {
	if says == "" {
		return asks + ": a blank line"
	}
	return asks + ": " + says
}

// WallKept says that it is.
func WallKept(text string) string { return "for the wall: " + text }

// OffTheWall asks before a line is taken off.
func OffTheWall(text string) string { return "take off the wall: " + text }

// TryingSaid says what is tried this time.
func TryingSaid(text string) string {
	if text == "" {
		return "nothing new is tried"
	}
	return "tried this time: " + text + "; it goes with the smelt"
}

// LessonsIn are lessons in one line.
func LessonsIn(texts []string) string { return LessonsHead + ": " + strings.Join(texts, "; ") }

// TryingIs says what is tried, on the plan.
func TryingIs(text string) string { return "tried this time: " + text }
