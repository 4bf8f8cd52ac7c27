package org.scrubline.rubric.format;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.MeasureKind;
import org.scrubline.rubric.Sources;
import tools.jackson.databind.JsonNode;

/** Reads one measure that is written out. */
final class MeasureReader {

    private MeasureReader() {}

    static Measure read(String stepCode, String stepWhere, JsonNode node, Faults faults) {
        Fields fields = Fields.coded(stepWhere, "measure", node, faults);
        String code = fields.code();
        MeasureKind kind = fields.choice("kind", MeasureKind.class);
        String target = fields.text("target");
        Band band = Band.read(fields);
        Measure measure = new Measure(
                stepCode + "-" + code,
                fields.text("name"),
                kind,
                fields.text("unit", ""),
                target,
                band.from(),
                band.to(),
                fields.text("accepted", target),
                stepSize(fields, kind),
                fields.has("sources") ? fields.texts("sources") : List.of(Sources.COMMON_PRACTICE));
        fields.done();
        checkKind(fields, measure);
        return measure;
    }

    private static @Nullable BigDecimal stepSize(Fields fields, MeasureKind kind) {
        BigDecimal stepSize = fields.decimal("stepSize");
        if (stepSize == null) {
            return kind == MeasureKind.COUNT ? BigDecimal.ONE : null;
        }
        if (stepSize.signum() <= 0) {
            fields.wrong("stepSize", "must be more than 0");
        }
        return stepSize;
    }

    private static void checkKind(Fields fields, Measure measure) {
        boolean yesNo = measure.kind() == MeasureKind.YES_NO;
        for (String key : List.of("unit", "accept", "stepSize")) {
            if (yesNo && fields.has(key)) {
                fields.wrong(key, "has no place in a yes-no measure");
            }
        }
        if (!yesNo && !fields.has("stepSize") && measure.stepSize() == null) {
            fields.wrong("stepSize", "is missing");
        }
        boolean measured = measure.kind() == MeasureKind.NUMBER || measure.kind() == MeasureKind.DURATION;
        if (measured && !fields.has("unit")) {
            fields.wrong("unit", "is missing");
        }
    }

    private record Band(@Nullable BigDecimal from, @Nullable BigDecimal to) {

        static Band read(Fields measure) {
            if (!measure.has("accept")) {
                return new Band(null, null);
            }
            Fields fields = measure.inner("accept");
            Band band = new Band(fields.decimal("from"), fields.decimal("to"));
            fields.done();
            if (!fields.has("from") && !fields.has("to")) {
                measure.wrong("accept", "needs from, to or both");
            }
            if (band.from != null && band.to != null && band.from.compareTo(band.to) > 0) {
                measure.wrong("accept", "runs from " + band.from + " down to " + band.to);
            }
            return band;
        }
    }
}
