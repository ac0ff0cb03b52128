// Package diagnose says which fault is behind a symptom, how sure that is, and
// which check to do next.
//
// Every fault of the catalogue is split into cases: where it sits, how grave it
// is. For each case a population of virtual machines is drawn, the n-th of every
// case with the same luck, so that what they have in common tells nothing apart.
// What their meters would show at each check, by the formulas of engine/machine,
// gives the case a mean and a covariance over all checks, and shares of open
// lines, restless digits and yeses. Readings are then weighed by conditioning, so
// that a reading which pins something down (a winding's copper, a battery's
// charge) is taken into account in what is expected of the next, and no precise
// reading can kill a population. Tails are heavy, each reading may be a slip, and
// every check is granted an error of the model.
package diagnose
