package words

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
)

// The screen of the pieces of iron: keys and what they do.
const (
	ForgeTitle     = "forge"
	DoForge        = "forge: pieces of iron"
	DoSession      = "a session at the forge, in one line"
	DoNewPiece     = "a piece from elsewhere"
	DoCut          = "cut it in two"
	DoWeld         = "weld it to another"
	DoTestPiece    = "test it"
	DoFireInOut    = "into the fire, out of it"
	DoPieceDeed    = "what else was done with it"
	DoMendForge    = "put right what was keyed of it"
	DoStrikeForge  = "cross out the last that was keyed here"
	ShortSession   = "a session"
	ShortNewPiece  = "new piece"
	ShortCut       = "cut in two"
	ShortWeld      = "welded to"
	ShortTest      = "test"
	ShortFire      = "fire in, out"
	ShortPieceDeed = "more"

	ForgeBare    = "No piece of iron yet. Weigh the bloom of a smelt (w at Fire, or its account): it stands here then; or n keys an old bloom, a gift, a bar of elsewhere."
	ForgeNothing = "no piece of iron yet: n keys one" // to a key that wants one
)

// What is asked at the forge.
const (
	PieceIsA      = "what is it"
	PieceName     = "what is it called"
	PieceFromText = "where is it from"
	PieceYear     = "of which year"
	PieceKg       = "what does it weigh"
	CutOne        = "the one part weighs"
	CutOther      = "the other part weighs"
	CutCrop       = "crop ends, cut off and kept"
	WeldWith      = "welded to which"
	WeldKg        = "what do they weigh together now"
	TestWhich     = "which test"
	TestShowed    = "what did it show"
	TestInWords   = "in own words"
	TestWords     = "what it showed"
	TestPlace     = "where on it: cm from the left end, or in words"
	PlaceBlank    = "blank: not said"
	PieceDeedOf   = "what else was done with "
	PieceWeigh    = "weighed"
	PieceWater    = "hung in water it weighs"
	PieceCropOff  = "crop ends cut off"
	PieceGone     = "it went: "
	PieceRename   = "call it otherwise"
	PieceSize     = "size: thick, wide, long"
	SizeThick     = "thick"
	SizeWide      = "wide"
	SizeLong      = "long"
	PiecePrinted  = "as somebody wrote of it: share and loss"
	PrintedOf     = "of what"
	PrintedMass   = "of how much"
	PrintedShare  = "how many per cent in print"
	PrintedLost   = "what was lost, in print"
	PieceCost     = "what it cost"
	CostAmount    = "how much money"
	CostCurrency  = "in which currency"
	PieceTo       = "to whom, or where"
	CautionsForge = "cautions again"
	NowItIs       = "and now it is"

	BlankNone   = "blank: none"
	AllOptional = "all optional"
)

// The fields of a session.
const (
	SessionDid   = "did"
	SessionHeats = "heats"
	SessionHours = "hours"
	SessionFuel  = "fuel"
	SessionKg    = "fuel burnt"
	SessionFlux  = "flux"
	SessionAfter = "mass after"
	SessionNow   = "now it is"
	SessionCost  = "cost"
	SessionWith  = "also worked"
	SessionSame  = "the same piece"
	SessionOf    = "a session on "
	SessionKeep  = "keep"
	DoKeepIt     = "keep it"
	DoNextField  = "next"
	DoPrevField  = "the one before"
	DoToKeep     = "to the end"
	DoOtherWay   = "another one"
	NotSaid      = "·"
)

// SessionEnds, SessionHalf and CostHint say how a session is keyed.
const (
	SessionEnds = "enter keeps it; up goes back to a field"
	SessionHalf = "half typed earlier: go on, or esc"
	CostHint    = "as 12.50 EUR; blank: not keyed"
)

// SessionOfSeveral refuses to make one piece of several in a session.
const SessionOfSeveral = "of several pieces one is made by welding: w on the list"

// SessionWithKeys names the other pieces by their digits.
func SessionWithKeys(names []string) string {
	if len(names) == 0 {
		return "there is no other piece"
	}
	said := make([]string, len(names))
	for i, name := range names {
		said[i] = strconv.Itoa(i+1) + " " + name
	}
	return "by its digit: " + strings.Join(said, ", ")
}

// SessionOneOf says which digit chooses what, beside the arrows.
func SessionOneOf(names []string) string {
	said := make([]string, len(names))
	for i, name := range names {
		if name == NotSaid {
			name = "not said"
		}
		said[i] = strconv.Itoa(i+1) + " " + name
	}
	return "left, right or " + strings.Join(said, ", ")
}

// SessionDidKeys says which keys say what was done.
func SessionDidKeys(keys []string) string { return strings.Join(keys, ", ") }

// UnitBlank is a unit beside a field that may stay blank.
func UnitBlank(unit string) string {
	if unit == "" {
		return BlankIsNot
	}
	return unit + ", " + BlankIsNot
}

// CostUnread refuses a cost.
func CostUnread(text string) string { return text + " is no cost: write it as 12.50 EUR" }

// What the screen shows.
const (
	HeadPieces    = "pieces"
	HeadHowItCame = "how it came"
	NoTestYet     = "not tested yet (e): spark, file, bend, quench, etch"
	SessionsNone  = "no session keyed yet"
	NoWayKnown    = "not known of which ore"
	ForOneKg      = "on the way, at the forge"
	ChainOf       = "what is left of it"
	TestsAt       = "tests at their place"
	NotKeyedYet   = "hours and fuel: not keyed"
	CompactedRow  = "compacted"
	NoClassOfOne  = "no class from one of them alone"
	CautionTag    = "care"
	LastWorked    = "last worked"
)

// ForgeAbout says of how many smelts the pieces are.
func ForgeAbout(pieces, smelts int) string {
	if smelts == 0 {
		return modelwords.Many(pieces, "piece")
	}
	return modelwords.Many(pieces, "piece") + " of " + modelwords.Many(smelts, "smelt")
}

// LastWorkedOn heads the answer.
func LastWorkedOn(at time.Time, name string, last bool) string {
	switch {
	case at.IsZero():
		return name
	case last:
		return LastWorked + ", " + at.Format("2 Jan") + ": " + name
	}
	return name + ", worked " + at.Format("2 Jan")
}

// ShareOfOre is a share in large letters.
func ShareOfOre(share float64) string {
	if share < 0.095 {
		return fmt.Sprintf("%.1f %%", 100*share)
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// ShareCaption says what it is a share of.
func ShareCaption(form entry.PieceKind, alike bool) string {
	said := modelwords.PieceKindShort(form) + " of the ore, dry"
	if alike {
		said += ", if the rest goes alike"
	}
	return said
}

// PieceGoneAs offers an end.
func PieceGoneAs(e entry.PieceEnd) string {
	switch e {
	case entry.EndGiven:
		return "given away"
	case entry.EndSample:
		return "kept or sent as a sample"
	case entry.EndScrap:
		return "to scrap"
	}
	return string(e)
}

// IsSpent refuses to work what another piece was made of.
func IsSpent(name string) string {
	return name + " was made into another piece: pick that one, or put right what was keyed"
}

// IsGone refuses to work what left the house.
func IsGone(name string) string {
	return name + " has left the house: put right what was keyed if it came back"
}

// NothingToWeld refuses a weld.
const NothingToWeld = "no other piece is there to weld it to"

// CentimetresLong says a length under a piece.
func CentimetresLong(u modelwords.Units, cm float64) string { return u.Value(cm, "cm", 0) }

// TestName offers a test.
func TestName(test string) string {
	if test == "hammer" {
		return "what the hammer showed: crumbles, cracks"
	}
	return test
}

// BareYear refuses a year.
func BareYear(text string) string { return text + " is no year: as 1998, or leave it blank" }

// PartName names a part of a piece that was cut.
func PartName(base, which string) string { return base + ", " + which }

// The parts of a cut.
const (
	PartOne   = "one"
	PartOther = "other"
)

// NumberedPiece names a piece that was made.
func NumberedPiece(k entry.PieceKind, n int) string {
	return fmt.Sprintf("%s %d", modelwords.PieceKindShort(k), n)
}

// OtherwiseIs offers another value for a field.
func OtherwiseIs(label string) string { return "otherwise: " + label }
