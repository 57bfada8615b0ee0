"""The rules: one small file per rule, its code in words. Facts in; findings, measures, questions out."""
