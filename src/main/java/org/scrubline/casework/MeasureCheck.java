package org.scrubline.casework;

import java.math.BigDecimal;
import java.util.Optional;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.MeasureKind;

/** Whether a measured value can be meant: a range far beyond any tolerance, never the tolerance itself. */
final class MeasureCheck {

    static final BigDecimal LARGEST_NUMBER = BigDecimal.valueOf(9999);
    static final BigDecimal LARGEST_COUNT = BigDecimal.valueOf(99);
    static final int DECIMALS = 3;

    private MeasureCheck() {}

    static Optional<Refusal> refusal(String field, Measure measure, BigDecimal value) {
        BigDecimal largest = largest(measure.kind());
        int decimals = value.stripTrailingZeros().scale();
        if (measure.kind() == MeasureKind.YES_NO && (decimals > 0 || outside(value, largest))) {
            return Optional.of(Refusal.at(field, "sheet.refusal.yes-no", measure.name()));
        }
        if (measure.kind() == MeasureKind.COUNT && decimals > 0) {
            return Optional.of(Refusal.at(field, "sheet.refusal.count", measure.name()));
        }
        if (outside(value, largest)) {
            return Optional.of(Refusal.at(field, "sheet.refusal.range", measure.name(), largest.toPlainString()));
        }
        return decimals > DECIMALS
                ? Optional.of(Refusal.at(field, "sheet.refusal.decimals", measure.name(), DECIMALS))
                : Optional.empty();
    }

    private static boolean outside(BigDecimal value, BigDecimal largest) {
        return value.signum() < 0 || value.compareTo(largest) > 0;
    }

    private static BigDecimal largest(MeasureKind kind) {
        return switch (kind) {
            case YES_NO -> BigDecimal.ONE;
            case COUNT -> LARGEST_COUNT;
            case NUMBER, DURATION -> LARGEST_NUMBER;
        };
    }
}
