package org.scrubline.command;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.scrubline.scoring.estimate.Interval;

/** The flat result of a statistic. An undefined value is kept as null, with a note that says why. */
final class StatisticResult {
    private static final int KEY_DIGITS = 6;

    private final Map<String, @Nullable Object> values = new LinkedHashMap<>();
    private final List<String> notes = new ArrayList<>();

    void put(String key, double value) {
        put(key, Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty(), "is not finite");
    }

    void put(String key, int value) {
        values.put(key, value);
    }

    /** A value that may be undefined; {@code why} completes the sentence "KEY ...". */
    void put(String key, OptionalDouble value, String why) {
        if (value.isPresent()) {
            values.put(key, value.getAsDouble());
        } else {
            values.put(key, null);
            note(key + " " + why);
        }
    }

    void put(String key, OptionalInt value, String why) {
        if (value.isPresent()) {
            values.put(key, value.getAsInt());
        } else {
            values.put(key, null);
            note(key + " " + why);
        }
    }

    /** Both limits under the two keys. */
    void put(String lowKey, String highKey, Interval interval) {
        put(lowKey, interval.low());
        put(highKey, interval.high());
    }

    void put(String lowKey, String highKey, Optional<Interval> interval, String why) {
        interval.ifPresentOrElse(limits -> put(lowKey, highKey, limits), () -> {
            values.put(lowKey, null);
            values.put(highKey, null);
            note(lowKey + " and " + highKey + " " + why);
        });
    }

    void note(String note) {
        notes.add(note);
    }

    Map<String, @Nullable Object> values() {
        Map<String, @Nullable Object> all = new LinkedHashMap<>(values);
        if (!notes.isEmpty()) {
            all.put("note", String.join("; ", notes) + ".");
        }
        return Collections.unmodifiableMap(all);
    }

    /** A number inside a key, at most six digits and no trailing zeros: 2, 0.05, 1e-05. */
    static String inKey(double value) {
        BigDecimal rounded =
                new BigDecimal(value).round(new MathContext(KEY_DIGITS)).stripTrailingZeros();
        if (rounded.signum() == 0) {
            return "0";
        }
        int exponent = rounded.precision() - rounded.scale() - 1;
        if (exponent >= -4 && exponent < KEY_DIGITS) {
            return rounded.toPlainString();
        }
        String digits =
                rounded.scaleByPowerOfTen(-exponent).stripTrailingZeros().toPlainString();
        return digits + (exponent < 0 ? "e-" : "e+") + (Math.abs(exponent) < 10 ? "0" : "") + Math.abs(exponent);
    }
}
