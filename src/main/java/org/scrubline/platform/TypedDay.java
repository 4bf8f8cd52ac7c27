package org.scrubline.platform;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;

/** Reads days people type into forms. */
public final class TypedDay {

    private static final int FIRST_YEAR = 2000;
    private static final int LAST_YEAR = 2100;

    private TypedDay() {}

    /** An ISO date such as 2026-03-12 of this century; empty for anything else. */
    public static Optional<LocalDate> of(String typed) {
        try {
            return Optional.of(LocalDate.parse(typed.strip()))
                    .filter(day -> day.getYear() >= FIRST_YEAR && day.getYear() < LAST_YEAR);
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
