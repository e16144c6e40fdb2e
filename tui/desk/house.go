package desk

// What a person keys at home, each a script at its screen.
const (
	ReedHollow = "nReed Hollow\n25\n\n50\n60\n15\n5\n20\n20\n" // a furnace: bore, mark, rim, tuyere above the floor, wall, its own bore and angle
	PondOre    = "n1rpond, roasted\n31\n3\n"                   // 31 kg, 3 % water
	HillOre    = "n1dhill, as dug\n12\n23\n"                   // 12 kg, 23 % water
	Bucket     = "ka1bucket\n1.8\n"                            // of charcoal
	Scoop      = "ka2scoop\n0.5\n"                             // of ore
	BloomOf3   = "wb3\nn4\n"                                   // a plan: a bloom of 3 kg, as sure as 4 in 10
)

// Alder is so many kg of alder charcoal, bought, with 12 % of water.
func Alder(kg string) string { return "n2balder\n" + kg + "\n12\n" }

// KeyFurnace has a furnace in the house.
func (d *Desk) KeyFurnace() {
	d.T.Helper()
	d.Press("v", "u")
	d.Script(ReedHollow)
}

// KeyStores keys scripts at the stores.
func (d *Desk) KeyStores(scripts ...string) {
	d.T.Helper()
	d.Press("v", "t")
	for _, s := range scripts {
		d.Script(s)
	}
}

// LightByPlan takes the usual way of a plan and lights the fire by it, some numbers being
// guesses or not.
func (d *Desk) LightByPlan() {
	d.T.Helper()
	d.Press("v", "p")
	d.Script(BloomOf3)
	d.Press("right", "left", "enter", "l", "pgdown", "enter")
	if d.M.Dialog() != nil {
		d.Press("y")
	}
}
