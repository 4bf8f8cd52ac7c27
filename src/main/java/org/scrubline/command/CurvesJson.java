package org.scrubline.command;

import java.util.List;
import org.scrubline.scoring.curve.Flag;
import tools.jackson.core.JsonGenerator;

/** JSON in the shapes of the {@code curves} result. */
final class CurvesJson {

    private CurvesJson() {}

    static void flags(JsonGenerator json, List<Flag> flags) {
        json.writeArrayPropertyStart("flags");
        for (Flag flag : flags) {
            json.writeStartObject();
            json.writeStringProperty("kind", flag.kind().name());
            json.writeStringProperty("subject", flag.subject());
            json.writeStringProperty("where", flag.where());
            json.writeNumberProperty("value", flag.value());
            json.writeStringProperty("sentence", flag.sentence());
            json.writeStringProperty("raised_without_cause", flag.kind().falseAlarms());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    static void id(JsonGenerator json, String name, String id) {
        boolean number = id.length() <= 9 && id.matches("0|[1-9][0-9]*");
        if (number) {
            json.writeNumberProperty(name, Integer.parseInt(id));
        } else {
            json.writeStringProperty(name, id);
        }
    }

    static void numbers(JsonGenerator json, String name, List<Double> values) {
        json.writeArrayPropertyStart(name);
        values.forEach(json::writeNumber);
        json.writeEndArray();
    }

    static void strings(JsonGenerator json, String name, List<String> values) {
        json.writeArrayPropertyStart(name);
        values.forEach(json::writeString);
        json.writeEndArray();
    }
}
