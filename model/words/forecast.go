package words

import "chargehand/model/forecast"

var doubts = map[forecast.Doubt]string{
	forecast.BlastOff:      "blast off: the charge waits until it blows again",
	forecast.Paused:        "work paused: the charge may come late",
	forecast.BlastChanged:  "blast changed: the charge may come sooner or later",
	forecast.TuyereChanged: "tuyere changed: the charge may come sooner or later",
	forecast.Tapped:        "slag tapped: the burden may have dropped, so look",
	forecast.Poked:         "burden poked: dropped without burning, so look",
	forecast.NewLevel:      "blast changed: too few charges since to tell well",
	forecast.FewIntervals:  "too few charges yet to tell well",
}

// Doubt says why the time of the next charge is unsure.
func Doubt(d forecast.Doubt) string { return doubts[d] }
