package words

import "chargehand/model/forecast"

var doubts = map[forecast.Doubt]string{
	forecast.BlastOff:      "blast off: waits until it blows again",
	forecast.Paused:        "work paused: the charge may be late",
	forecast.BlastChanged:  "blast changed: may come sooner or later",
	forecast.TuyereChanged: "tuyere changed: may come sooner or later",
	forecast.Tapped:        "slag tapped: burden may have dropped",
	forecast.Poked:         "poked: burden fell without burning",
	forecast.NewLevel:      "blast changed: too few charges to tell",
	forecast.FewIntervals:  "too few charges yet to tell well",
}

// Doubt says why the time of the next charge is unsure.
func Doubt(d forecast.Doubt) string { return doubts[d] }
