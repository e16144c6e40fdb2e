package learn

// TrialsWith is Trials with another weight of the prior.
var TrialsWith = trials
