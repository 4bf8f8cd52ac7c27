package org.scrubline.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class MessageKeyTests {

    private static final List<Templates.Template> TEMPLATES = Templates.all();
    private static final Set<String> DEFINED = MessageKeys.defined();

    @Test
    void noTemplateSpeaksForItself() {
        assertThat(TEMPLATES).hasSizeGreaterThan(20);
        assertThat(TEMPLATES.stream().flatMap(template -> WordsOnTheTemplate.in(template).stream()))
                .isEmpty();
    }

    @Test
    void everyKeyATemplateNamesHasAMessage() {
        Stream<String> missing = TEMPLATES.stream()
                .flatMap(template -> MessageKeys.named(template.text()).stream()
                        .filter(key -> !DEFINED.contains(key))
                        .map(key -> template.path() + ": " + key));
        assertThat(missing).isEmpty();
    }

    @Test
    void everyBeginningOfAKeyHasMessagesToChooseFrom() {
        Stream<String> missing = TEMPLATES.stream()
                .flatMap(template -> MessageKeys.begun(template.text()).stream()
                        .filter(begun -> DEFINED.stream().noneMatch(key -> key.startsWith(begun)))
                        .map(begun -> template.path() + ": " + begun));
        assertThat(missing).isEmpty();
    }

    @Test
    void noMessageIsLeftOver() {
        assertThat(DEFINED).isNotEmpty();
        assertThat(DEFINED.stream().filter(MessageKeys.used(TEMPLATES).negate()))
                .isEmpty();
    }

    @Test
    void noTemplateCarriesInlineStyleOrScriptOrAForeignAddress() {
        Pattern inline = Pattern.compile("\\s(?:style|on[a-z]+|th:style|th:on[a-z]+)=|<style|<script(?![^>]*src=)"
                + "|(?:href|src)=\"(?:https?:)?//");
        assertThat(TEMPLATES)
                .allSatisfy(template ->
                        assertThat(template.text()).as(template.path()).doesNotContainPattern(inline));
    }

    @Test
    void noElementIsReplacedUnderAConditionOrInALoop() {
        // Replacement comes first: a condition or a loop on the same element would be dropped without a word.
        assertThat(TEMPLATES.stream().flatMap(MessageKeyTests::lostConditions)).isEmpty();
    }

    @Test
    void everyPageOnTheLayoutAsksForStandardsMode() {
        assertThat(TEMPLATES)
                .filteredOn(template -> template.text().contains("layout/page ::"))
                .allSatisfy(page -> assertThat(page.text()).as(page.path()).startsWith("<!DOCTYPE html>"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<p>Hello</p>",
                "<p th:text=\"'Hello ' + ${name}\">x</p>",
                "<p th:text=\"|Hello ${name}|\">x</p>",
                "<p><b th:text=\"${n}\">3</b> cases</p>",
                "<input placeholder=\"Name\"/>",
                "<a th:title=\"'Open'\" th:text=\"#{a.b}\">x</a>",
                "<img alt=\"a curve\"/>"
            })
    void aWordOnATemplateIsFound(String markup) {
        assertThat(WordsOnTheTemplate.in(Templates.parse("sample", markup))).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<p th:text=\"#{a.b}\">Prototype</p>",
                "<p><b th:text=\"${n}\">3</b> · –</p>",
                "<p th:text=\"${few} ? #{a.few} : ${text}\">x</p>",
                "<p th:text=\"#{${'a.b.' + kind}}\">x</p>",
                "<p th:text=\"| – ${hint}|\">x</p>",
                "<input placeholder=\"–\" th:aria-label=\"#{a.b(${name})}\"/>"
            })
    void anExpressionOrPunctuationIsNotAWord(String markup) {
        assertThat(WordsOnTheTemplate.in(Templates.parse("sample", markup))).isEmpty();
    }

    private static Stream<String> lostConditions(Templates.Template template) {
        NodeList elements = template.tree().getElementsByTagName("*");
        return IntStream.range(0, elements.getLength())
                .mapToObj(at -> (Element) elements.item(at))
                .filter(element -> element.hasAttribute("th:replace"))
                .filter(element ->
                        Stream.of("th:if", "th:unless", "th:each", "th:with").anyMatch(element::hasAttribute))
                .map(element -> template.path() + ": <" + element.getTagName() + " th:replace=\""
                        + element.getAttribute("th:replace") + "\">");
    }
}
