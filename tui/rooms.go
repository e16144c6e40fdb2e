package tui

import (
	"chargehand/tui/account"
	"chargehand/tui/book"
	"chargehand/tui/fire"
	"chargehand/tui/furnace"
	"chargehand/tui/help"
	"chargehand/tui/light"
	"chargehand/tui/plan"
	"chargehand/tui/replay"
	"chargehand/tui/screen"
	"chargehand/tui/shelf"
	"chargehand/tui/start"
	"chargehand/tui/stores"
)

// rooms are the screens, in the order in which the list of screens has them. A new
// one is a line here and a folder of its own; its letter stands in screen.Letters.
func rooms(cfg Config) []screen.Screen {
	return []screen.Screen{
		fire.New(), book.New(), replay.New(), stores.New(), furnace.New(), plan.New(), shelf.New(), account.New(), start.New(cfg.Starters[0], cfg.Practice), help.New(),
		light.New(cfg.Starters, cfg.Store),
	}
}
