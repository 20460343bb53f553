"""In: what the stages before made. Out: findings; judgement only, nothing is changed."""
