package org.scrubline.casework;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.StaleData;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.rubric.Measure;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** What differs between two versions of a sheet, in words, line by line. */
@Component
class SheetDifferences {

    private final MessageSource messages;

    SheetDifferences(MessageSource messages) {
        this.messages = messages;
    }

    /**
     * The lines in which {@code yours} differs from {@code stored}.
     *
     * @param yours what the stored sheet would be with the change in it
     */
    List<StaleData.Line> between(Rubric rubric, EventCatalogue catalogue, Sheet yours, Sheet stored) {
        List<StaleData.Line> lines = new ArrayList<>();
        add(lines, say("sheet.part"), part(yours), part(stored));
        add(lines, say("sheet.supervision"), supervision(yours), supervision(stored));
        for (Step step : rubric.steps()) {
            add(lines, step.name(), state(yours, step), state(stored, step));
            for (Measure measure : step.measures()) {
                add(lines, measure.name(), measure(yours, measure), measure(stored, measure));
            }
        }
        add(lines, say("sheet.events"), events(catalogue, yours), events(catalogue, stored));
        add(lines, say("sheet.strength"), yours.strength(), stored.strength());
        add(lines, say("sheet.next-step"), yours.nextStep(), stored.nextStep());
        return lines;
    }

    private void add(List<StaleData.Line> lines, String label, String yours, String stored) {
        if (!yours.equals(stored)) {
            lines.add(new StaleData.Line(label, orNothing(yours), orNothing(stored)));
        }
    }

    private String part(Sheet sheet) {
        return name("part", sheet.confirmedPart());
    }

    private String supervision(Sheet sheet) {
        return name("supervision", sheet.givenSupervision());
    }

    private String name(String family, @Nullable Enum<?> value) {
        return value == null ? "" : say("sheet." + family + "." + value.name());
    }

    private String state(Sheet sheet, Step step) {
        return sheet.step(step.code())
                .fold(
                        String::valueOf,
                        cause -> say("sheet.state.BY_SUPERVISOR"),
                        () -> say("sheet.state.NOT_PART"),
                        () -> say("sheet.state.NOT_SEEN"),
                        () -> "");
    }

    private static String measure(Sheet sheet, Measure measure) {
        return Objects.toString(sheet.measures().get(measure.code()), "");
    }

    private static String events(EventCatalogue catalogue, Sheet sheet) {
        return sheet.events().stream()
                .map(event -> catalogue.kind(event.eventCode()).name())
                .sorted()
                .collect(Collectors.joining("; "));
    }

    private String orNothing(String text) {
        return text.isEmpty() ? say("sheet.nothing") : text;
    }

    private String say(String key) {
        Locale locale = LocaleContextHolder.getLocale();
        return messages.getMessage(key, null, locale);
    }
}
