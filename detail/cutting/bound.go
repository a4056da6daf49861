package cutting

// bound returns how many new sticks what is left needs at the least after n sticks: by length with the begun
// sticks still to come filled to the brim; once they are used also by L2 of Martello and Toth (1990,
// Knapsack Problems, 8.3): pieces too long to lie with others each take a stick of their own.
func (s *search) bound(left []int, n int) int {
	sum := int64(0)
	for k, c := range left {
		sum += int64(c) * s.weight[k]
	}
	for i := n; i < len(s.begun); i++ {
		sum -= s.begun[i]
	}
	least := sticks(sum, s.room)
	if n < len(s.begun) {
		return least
	}
	for k := range left {
		if left[k] > 0 && 2*s.weight[k] <= s.room {
			least = max(least, s.apart(left, s.weight[k]))
		}
	}
	return max(least, s.apart(left, 0))
}

// apart is L2 with pieces lighter than small left out.
func (s *search) apart(left []int, small int64) int {
	alone, long := 0, 0
	var longSum, midSum int64
	for k, c := range left {
		w := s.weight[k]
		switch {
		case c == 0 || w < small:
		case w > s.room-small:
			alone += c
		case 2*w > s.room:
			long += c
			longSum += int64(c) * w
		default:
			midSum += int64(c) * w
		}
	}
	return alone + long + sticks(midSum-(int64(long)*s.room-longSum), s.room)
}

// sticks returns how many of a room hold a sum, 0 for none.
func sticks(sum, room int64) int {
	if sum <= 0 {
		return 0
	}
	return int((sum + room - 1) / room)
}
