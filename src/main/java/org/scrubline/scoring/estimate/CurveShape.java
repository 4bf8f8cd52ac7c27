package org.scrubline.scoring.estimate;

/**
 * Shapes of a learning curve y = f(x; b), with their derivatives by the parameters b1, b2, ...; x is usually the number
 * of cases, y a performance.
 */
public enum CurveShape {
    /** b1 (1 - exp(-b2 x)): 0 at x = 0, rises to b1 at the rate b2; half of it is reached at x = ln 2 / b2. */
    EXP_RISE(2) {
        @Override
        double value(double x, double[] b) {
            return -b[0] * Math.expm1(-b[1] * x);
        }

        @Override
        double[] gradient(double x, double[] b) {
            return new double[] {-Math.expm1(-b[1] * x), b[0] * x * Math.exp(-b[1] * x)};
        }
    },
    /** b1 x^b2: the power law of practice; x above 0. */
    POWER(2) {
        @Override
        double value(double x, double[] b) {
            return b[0] * Math.pow(x, b[1]);
        }

        @Override
        double[] gradient(double x, double[] b) {
            double power = Math.pow(x, b[1]);
            return new double[] {power, b[0] * power * Math.log(x)};
        }
    },
    /** b1 / (1 + exp(b2 - b3 x)): three-parameter logistic growth from 0 to b1, half of it at x = b2 / b3. */
    LOGISTIC3(3) {
        @Override
        double value(double x, double[] b) {
            return b[0] / (1 + Math.exp(b[1] - b[2] * x));
        }

        @Override
        double[] gradient(double x, double[] b) {
            double e = Math.exp(b[1] - b[2] * x);
            double slope = b[0] * e / ((1 + e) * (1 + e));
            return new double[] {1 / (1 + e), -slope, x * slope};
        }
    },
    /** exp(-b1 x) / (b2 + b3 x): 1 / b2 at x = 0, then a decay that slows down; does not exist where b2 + b3 x = 0. */
    DECAY(3) {
        @Override
        double value(double x, double[] b) {
            return Math.exp(-b[0] * x) / (b[1] + b[2] * x);
        }

        @Override
        double[] gradient(double x, double[] b) {
            double value = value(x, b);
            double part = -value / (b[1] + b[2] * x);
            return new double[] {-x * value, part, x * part};
        }
    };

    private final int parameters;

    CurveShape(int parameters) {
        this.parameters = parameters;
    }

    /** {@return the number of parameters, 2 or 3} */
    public int parameters() {
        return parameters;
    }

    abstract double value(double x, double[] b);

    abstract double[] gradient(double x, double[] b);
}
