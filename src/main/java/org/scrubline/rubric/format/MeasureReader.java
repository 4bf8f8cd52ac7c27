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

    static Measure read(String stepCode, String stepWhere, JsonNode node) {
        Fields fields = Fields.coded(stepWhere, "measure", node);
        MeasureKind kind = fields.choice("kind", MeasureKind.class);
        String target = fields.text("target");
        Band band = Band.read(fields);
        Measure measure = new Measure(
                stepCode + "-" + fields.text("code"),
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
            throw fields.wrong("stepSize", "must be more than 0");
        }
        return stepSize;
    }

    private static void checkKind(Fields fields, Measure measure) {
        boolean yesNo = measure.kind() == MeasureKind.YES_NO;
        for (String key : List.of("unit", "accept", "stepSize")) {
            if (yesNo && fields.has(key)) {
                throw fields.wrong(key, "has no place in a yes-no measure");
            }
        }
        if (!yesNo && measure.stepSize() == null) {
            throw fields.wrong("stepSize", "is missing");
        }
        boolean measured = measure.kind() == MeasureKind.NUMBER || measure.kind() == MeasureKind.DURATION;
        if (measured && measure.unit().isEmpty()) {
            throw fields.wrong("unit", "is missing");
        }
    }

    private record Band(@Nullable BigDecimal from, @Nullable BigDecimal to) {

        static Band read(Fields measure) {
            if (!measure.has("accept")) {
                return new Band(null, null);
            }
            Fields fields = new Fields(measure.where() + ", accept", measure.node("accept"));
            Band band = new Band(fields.decimal("from"), fields.decimal("to"));
            fields.done();
            if (band.from == null && band.to == null) {
                throw measure.wrong("accept", "needs from, to or both");
            }
            if (band.from != null && band.to != null && band.from.compareTo(band.to) > 0) {
                throw measure.wrong("accept", "runs from " + band.from + " down to " + band.to);
            }
            return band;
        }
    }
}
