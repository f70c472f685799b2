"""The interval: budgets, and Monte Carlo in judgement of them."""
