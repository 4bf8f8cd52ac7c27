package org.scrubline.cohort.web;

import java.util.List;
import java.util.stream.Stream;
import org.scrubline.cohort.TraineeRow;

/** Which trainees the tables show. */
enum RowFilter {
    ALL("") {
        @Override
        boolean shows(TraineeRow row) {
            return true;
        }
    },
    /** Those with a contested sheet. */
    CONTESTED("contested") {
        @Override
        boolean shows(TraineeRow row) {
            return row.contested() > 0;
        }
    };

    private final String value;

    RowFilter(String value) {
        this.value = value;
    }

    abstract boolean shows(TraineeRow row);

    /** As it stands in the address. */
    String value() {
        return value;
    }

    /** Everything for what is unknown. */
    static RowFilter of(String value) {
        return Stream.of(values())
                .filter(filter -> filter.value.equals(value))
                .findFirst()
                .orElse(ALL);
    }

    List<TraineeRow> of(List<TraineeRow> rows) {
        return rows.stream().filter(this::shows).toList();
    }
}
