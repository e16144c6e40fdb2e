package words

import (
	"strconv"

	"chargehand/model/entry"
	modelwords "chargehand/model/words"
)

// Sure asks once before something that is hard to take back.
func Sure(what string) string { return what + ": sure" }

// LeaveRunning asks before a running smelt is left.
func LeaveRunning(id string) string {
	return "leave " + id + " running (it goes on at the next start)"
}

// LeaveUnkept asks what to do about entries that are not kept.
func LeaveUnkept(n int) string { return Entries(n) + " NOT kept yet" }

// The ways to leave.
const (
	LeaveWait   = "leave as soon as they are kept"
	LeaveStay   = "stay"
	LeaveAnyway = "leave, and write them elsewhere"
	Leaving     = "leaving as soon as all is kept"
)

// Entries is a number of entries.
func Entries(n int) string {
	if n == 1 {
		return "1 entry"
	}
	return strconv.Itoa(n) + " entries"
}

// KeptNot says of entries that are not kept what to do and why. What to do comes first: it
// stands in one line, of which a small window shows the beginning.
func KeptNot(why string, diskFull bool) string {
	do := "leave this running: they are held and tried again; "
	if diskFull {
		do = "make room on the disk; " + do
	}
	return do + why
}

// Told is what the book had to put right, or that another took over; the keys
// lead to all of it.
func Told(said []string, keys string) string {
	first := keys + " has all of it: "
	if more := len(said) - 1; more > 0 {
		first = keys + " has this and " + strconv.Itoa(more) + " more: "
	}
	return first + said[0]
}

// MessagesWait says that the book put something right that nobody has read yet.
func MessagesWait(n int) string { return "READ: " + Messages(n) }

// Messages is a number of messages of the book.
func Messages(n int) string {
	if n == 1 {
		return "1 message"
	}
	return strconv.Itoa(n) + " messages"
}

// EntriesLost says which entries of the smelt shown are lost, and what that means;
// empty for none.
func EntriesLost(lost []entry.Gap) string {
	if len(lost) == 0 {
		return ""
	}
	said := modelwords.GapSaid(lost[0])
	if more := len(lost) - 1; more > 0 {
		said += " (and at " + strconv.Itoa(more) + " more)"
	}
	return said + ": what is shown lacks them"
}

// SlowDisk says that the disk does not answer.
const SlowDisk = "the disk does not answer; they are held here: leave this running"

// Refused says that the book will not take an entry.
func Refused(what, why string) string { return "NOT kept and dropped, " + what + ": " + why }

// Answers of the program itself.
const (
	PasteIgnored  = "so many keys at once are pasted text, for fields only: nothing done"
	NowhereBack   = "nothing to go back to; v shows the other screens"
	WeekToLookAt  = "invented, to look at only: v t stores, v u furnace, v p plan, esc back"
	WeekOnlyLooks = "this week is invented, only to look at: nothing is kept; esc leads back"
	NoDemo        = "there is no smelt to look at in this program"
)

// CommandFailed says that the program itself is at fault.
func CommandFailed(why string) string {
	return "what is kept is safe; something in the program failed: " + why
}

// SumsFailed says behind the answer of an act that a job of the solver broke down; the
// next key asks for another.
const SumsFailed = "sums broke down"

// Answers of a screen that only watches.
const (
	OnlyWatching = "this screen only watches: key it on the one at the furnace"
	NoneAlight   = "no fire is alight: the next one to be lit is shown here"
)

// NothingNew says why what is kept meanwhile is not shown.
func NothingNew(why string) string { return "what is keyed now is not seen here: " + why }

// CannotOpen says why a smelt does not open.
func CannotOpen(id, why string) string { return id + " does not open: " + why }

// EmptySmelt says that a smelt holds no entries.
func EmptySmelt(id string) string { return id + " holds no entries: there is nothing to show" }

// CannotReadShelf says why the shelf is not shown.
func CannotReadShelf(why string) string {
	return "the list of smelts cannot be read: " + why + "; a new smelt can be run all the same"
}

// BeingRead says that the book is being read.
const BeingRead = "reading the book"

// Opened says which smelt is shown.
func Opened(id string) string { return "this is " + id }
