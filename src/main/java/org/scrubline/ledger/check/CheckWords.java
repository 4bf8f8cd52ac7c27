package org.scrubline.ledger.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Says in plain words what a check came to. */
public final class CheckWords {

    /** Length of a day as the database writes it, year-month-day. */
    private static final int DAY = 10;

    /** Looks up a message; null when there is none of that key. */
    @FunctionalInterface
    public interface Messages {
        @Nullable
        String find(String key, Object... arguments);
    }

    private final Messages messages;

    public CheckWords(Messages messages) {
        this.messages = messages;
    }

    /** One sentence: sound or not. */
    public String verdict(CheckResult result) {
        return say(result.sound() ? "ledger.verdict.sound" : "ledger.verdict.unsound", result.problems());
    }

    /** What was checked, one sentence each. */
    public List<String> facts(CheckResult result) {
        List<String> facts = new ArrayList<>();
        facts.add(say("ledger.fact.leaves", result.leaves(), result.records()));
        facts.add(
                result.newestCheckpoint() == 0
                        ? say("ledger.fact.no-checkpoint")
                        : say("ledger.fact.checkpoints", result.checkpoints(), result.newestCheckpoint()));
        if (result.held() > 0) {
            facts.add(say("ledger.fact.held", result.held()));
        }
        if (result.unsealed() > 0) {
            facts.add(say("ledger.fact.unsealed", result.unsealed()));
        }
        result.removals()
                .forEach(removal -> facts.add(say(
                        "ledger.fact.removed",
                        removal.records(),
                        day(removal.at()),
                        removal.askedBy(),
                        removal.removedBy())));
        if (result.signedWith() != null) {
            facts.add(say(result.keyGiven() ? "ledger.fact.key-given" : "ledger.fact.key-found", result.signedWith()));
        }
        return facts;
    }

    /** The day in UTC: a command line has no programme whose zone it could take. */
    private static String day(String instant) {
        return instant.length() < DAY ? instant : instant.substring(0, DAY);
    }

    /** Each finding: which record, what is wrong, what that means. */
    public List<String> findings(CheckResult result) {
        List<String> sentences = new ArrayList<>();
        result.found().forEach(finding -> sentences.add(sentence(finding)));
        long more = result.problems() - result.found().size();
        if (more > 0) {
            sentences.add(say("ledger.more", more));
        }
        return sentences;
    }

    private String sentence(Finding finding) {
        List<Object> arguments = new ArrayList<>();
        arguments.add(finding.kind().isEmpty() ? "" : kind(finding.kind()));
        arguments.addAll(finding.arguments());
        return say("ledger.problem." + finding.problem().name(), arguments.toArray());
    }

    /** A kind without words of its own is said by its name. */
    private String kind(String name) {
        String words = messages.find("ledger.kind." + name);
        return words == null ? name.toLowerCase(Locale.ROOT).replace('_', ' ') : words;
    }

    private String say(String key, Object... arguments) {
        return Objects.requireNonNull(messages.find(key, arguments), key);
    }
}
