package tui

import (
	"chargehand/tui/account"
	"chargehand/tui/book"
	"chargehand/tui/compare"
	"chargehand/tui/fire"
	"chargehand/tui/forge"
	"chargehand/tui/furnace"
	"chargehand/tui/help"
	"chargehand/tui/light"
	"chargehand/tui/logs"
	"chargehand/tui/plan"
	"chargehand/tui/rehearsal"
	"chargehand/tui/replay"
	"chargehand/tui/screen"
	"chargehand/tui/shelf"
	"chargehand/tui/start"
	"chargehand/tui/stores"
	"chargehand/tui/why"
)

// rooms are the screens, in the order in which the list of screens has them. A new
// one is a line here and a folder of its own; its letter stands in screen.Letters.
func rooms(cfg Config) []screen.Screen {
	if cfg.Rehearsal != "" { // nothing of the house is in it
		return []screen.Screen{
			fire.New(), book.New(), replay.New(), shelf.New(), account.New(), why.New(), rehearsal.New(), help.New(), light.New(cfg.Starters, cfg.Store),
		}
	}
	if cfg.Watching != nil { // nothing is begun in it
		return []screen.Screen{
			fire.New(), book.New(), replay.New(), stores.New(), furnace.New(), plan.New(cfg.Store), shelf.New(), compare.New(cfg.Store), account.New(), why.New(), forge.New(), help.New(),
		}
	}
	begin := start.New(cfg.Starters[0])
	if cfg.Rehearsals {
		begin = start.Rehearsing(cfg.Starters[0])
	}
	return []screen.Screen{
		fire.New(), book.New(), replay.New(), stores.New(), furnace.New(), plan.New(cfg.Store), shelf.New(), compare.New(cfg.Store), account.New(), why.New(), forge.New(), logs.New(cfg.Logs), begin, help.New(),
		light.New(cfg.Starters, cfg.Store),
	}
}
