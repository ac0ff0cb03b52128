package uncertainty

// Means gives the mean of each quantity over some repetitions and the covariance
// of these means (GUM 4.2.3 and 5.2.3, eq. 17). Each row is one repetition:
// all quantities, read at the same time.
//
// From a single row nothing can be said about scatter, and the covariance is
// NaN. From a few rows the scatter is itself doubtful: by about a third of its
// size for five (GUM table E.1, from memory).
func Means(rows [][]float64) (mean []float64, cov Covariance) {
	if len(rows) == 0 {
		panic("uncertainty: no rows to take the mean of")
	}
	n := float64(len(rows))
	mean = make([]float64, len(rows[0]))
	for _, row := range rows {
		mustMatch("rows", len(row), len(mean))
		for i := range row {
			mean[i] += row[i] / n
		}
	}
	return mean, scatter(rows, mean)
}

func scatter(rows [][]float64, mean []float64) Covariance {
	n := float64(len(rows))
	c := Certain(len(mean))
	for i := range c {
		for j := range c {
			sum := 0.0
			for _, row := range rows {
				sum += (row[i] - mean[i]) * (row[j] - mean[j])
			}
			c[i][j] = sum / (n * (n - 1)) // 0/0, that is NaN, for a single row
		}
	}
	return c
}
