package org.scrubline.progress;

import com.fasterxml.jackson.annotation.JsonAutoDetect.Visibility;
import org.scrubline.scoring.curve.PopulationFit;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.json.JsonMapper;

/** A population fit as JSON text: its components alone, in alphabetical order, every number to its last bit. */
final class FitJson {

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
            .changeDefaultVisibility(visible -> visible.withIsGetterVisibility(Visibility.NONE))
            .build();

    private FitJson() {}

    static String write(PopulationFit fit) {
        return MAPPER.writeValueAsString(fit);
    }

    static PopulationFit read(String text) {
        return MAPPER.readValue(text, PopulationFit.class);
    }
}
