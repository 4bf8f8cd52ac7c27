package org.scrubline.people.web;

import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.scrubline.people.Programme;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.people.SettingChange;
import org.scrubline.people.SettingKey;
import org.scrubline.people.Settings;
import org.scrubline.platform.TableView;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.platform.TableView.Column;
import org.scrubline.platform.Wording;
import org.springframework.stereotype.Component;

/** Makes the pages of a programme's settings. */
@Component
class SettingsPages {

    private static final String NONE = "–";

    private final Settings settings;
    private final SettingWords words;
    private final Wording wording;

    SettingsPages(Settings settings, SettingWords words, Wording wording) {
        this.settings = settings;
        this.words = words;
        this.wording = wording;
    }

    /**
     * One setting.
     *
     * @param value that holds, with its unit
     * @param typed the number alone, for the form
     * @param choices for a setting that is yes or no, otherwise empty
     * @param history every change, newest first
     */
    record SettingPage(
            String programme,
            String key,
            String name,
            String about,
            String value,
            String usual,
            String typed,
            String range,
            List<ZoneOptions.Option> choices,
            TableView history) {}

    /** Every setting with what holds, its default, and its newest change. */
    TableView list(Programme programme) {
        ProgrammeSettings now = settings.of(programme.id());
        List<SettingChange> history = settings.history(programme.id());
        return new TableView(
                columns("name", "value", "usual", "changed", "reason"),
                Arrays.stream(SettingKey.values())
                        .map(key -> row(programme, key, now, newest(history, key)))
                        .toList());
    }

    private static Optional<SettingChange> newest(List<SettingChange> history, SettingKey key) {
        return history.stream().filter(change -> change.key() == key).findFirst();
    }

    private List<Cell> row(Programme programme, SettingKey key, ProgrammeSettings now, Optional<SettingChange> newest) {
        return List.of(
                new Cell(words.name(key), "/settings/" + key + "?programme=" + programme.id()),
                Cell.of(words.value(key, now.value(key))),
                Cell.of(words.value(key, now.usual(key))),
                Cell.of(newest.map(change -> who(change, programme.zone())).orElse(NONE)),
                Cell.of(newest.map(SettingChange::reason).orElse(NONE)));
    }

    private String who(SettingChange change, ZoneId zone) {
        return wording.text("settings.by", change.changedBy(), words.at(change.changedAt(), zone));
    }

    SettingPage one(Programme programme, SettingKey key) {
        ProgrammeSettings now = settings.of(programme.id());
        int value = now.value(key);
        List<ZoneOptions.Option> choices = key.unit() == SettingKey.Unit.YES_NO
                ? Stream.of(1, 0)
                        .map(choice -> new ZoneOptions.Option(String.valueOf(choice), words.value(key, choice)))
                        .toList()
                : List.of();
        return new SettingPage(
                programme.id().toString(),
                key.name(),
                words.name(key),
                words.about(key),
                words.value(key, value),
                words.value(key, now.usual(key)),
                String.valueOf(value),
                wording.text("settings.range", words.value(key, key.least()), words.value(key, key.most())),
                choices,
                history(programme, key));
    }

    private TableView history(Programme programme, SettingKey key) {
        return new TableView(
                columns("changed", "value", "reason"),
                settings.history(programme.id()).stream()
                        .filter(change -> change.key() == key)
                        .map(change -> List.of(
                                Cell.of(who(change, programme.zone())),
                                Cell.of(words.value(key, change.value())),
                                Cell.of(change.reason())))
                        .toList());
    }

    private List<Column> columns(String... keys) {
        return Stream.of(keys)
                .map(key -> new Column(wording.text("settings.column." + key), false))
                .toList();
    }
}
