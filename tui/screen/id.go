package screen

// ID names a screen; it is what an entry says about where it was keyed.
type ID string

// The screens, those to come among them: each has its letter in the list of
// screens, so that none is given away twice.
const (
	Start   ID = "start"
	Light   ID = "light"
	Fire    ID = "fire"
	Book    ID = "book"
	Replay  ID = "replay"
	Shelf   ID = "shelf"
	Help    ID = "help"
	Stores  ID = "stores"
	Furnace ID = "furnace"
	Plan    ID = "plan"
	Account ID = "account"
	Forge   ID = "forge"
	Compare ID = "compare"
	Why     ID = "why"
	Logs    ID = "logs"
)

// Letters are the keys of the screens in the list of screens. Light has none: it
// is reached from the start.
var Letters = map[ID]string{
	Fire: "f", Book: "b", Replay: "r", Shelf: "s", Start: "a", Help: "h",
	Stores: "t", Furnace: "u", Plan: "p", Account: "c", Forge: "g", Compare: "m", Why: "w", Logs: "i",
}

// Keys of that list which lead to no screen. They too are settled here.
const (
	LetterBackground = "l" // dark or light
	LetterSettings   = "e"
	LetterRemind     = "j" // also among the rare acts
	LetterRunning    = "o" // back to the running smelt, while another one is shown
	LetterLeave      = "q"
)
