package physics

// ErgunGradient gives the pressure drop in Pa per m of a packed bed: 150 mu u (1-e)^2/(d^2 e^3) + 1.75 rho u^2 (1-e)/(d e^3),
// with u the speed in the empty shaft in m/s, d the size of a lump as a ball in m, e the void. Ergun 1952, Chem. Eng. Prog.
// 48:89, for 1 < rho u d/(mu (1-e)) < 2300; above about 700 it reads high.
func ErgunGradient(size, void, speed, density, viscosity float64) float64 {
	solid := 1 - void
	e3 := void * void * void
	return 150*viscosity*speed*solid*solid/(size*size*e3) + 1.75*density*speed*speed*solid/(size*e3)
}

// LumpRoundness turns the sieve size of charcoal into that of the ball with its ratio of surface to volume (0.6-0.7, from
// memory, unverified).
const LumpRoundness = 0.65

// TuyereDrop gives the pressure in Pa that a flow of air, m3/s at a density in kg/m3, spends in a tuyere of a bore in m: the
// speed head of the jet, none of it recovered, times 1 + loss for entrance and pipe (0.5 for a sharp entrance; textbook).
func TuyereDrop(flow, density, bore, loss float64) (float64, error) {
	if err := InRange("tuyere bore", bore, 0.005, 0.2); err != nil {
		return 0, err
	}
	speed := flow / discArea(bore)
	return (1 + loss) * density * speed * speed / 2, nil
}
