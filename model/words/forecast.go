package words

import "chargehand/model/forecast"

var doubts = map[forecast.Doubt]string{
	forecast.BlastOff:      "blast off: the next charge waits until it blows again",
	forecast.Paused:        "work paused: the next charge may come late",
	forecast.BlastChanged:  "blast changed: the next charge may come sooner or later than before",
	forecast.TuyereChanged: "tuyere changed: the next charge may come sooner or later than before",
	forecast.Tapped:        "slag tapped: the burden may have dropped, look at the level",
	forecast.Poked:         "burden poked: it dropped without burning, look at the level",
	forecast.NewLevel:      "other intervals since the blast changed, too few yet to tell well",
	forecast.FewIntervals:  "too few charges yet to tell well",
}

// Doubt says why the time of the next charge is unsure.
func Doubt(d forecast.Doubt) string { return doubts[d] }
