package org.scrubline.platform.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import jdk.net.UnixDomainPrincipal;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.context.support.StaticApplicationContext;
import org.springframework.expression.Expression;
import org.springframework.expression.PropertyAccessor;
import org.springframework.expression.spel.SpelEvaluationException;
import org.springframework.expression.spel.standard.SpelExpressionParser;
import org.thymeleaf.context.Context;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.spring6.expression.ThymeleafEvaluationContext;
import org.thymeleaf.templateresolver.StringTemplateResolver;

class RecordPropertiesTests {

    private final SpringTemplateEngine templates = new SpringTemplateEngine();
    private final RecordProperties properties = new RecordProperties(templates);
    private final ThymeleafEvaluationContext expressions =
            new ThymeleafEvaluationContext(new StaticApplicationContext(), null);

    private record Cell(String text, @Nullable String href) {}

    private record Line(String text) {
        String secret() {
            return "not a component";
        }
    }

    @BeforeEach
    void aPageWasPrinted() {
        templates.setTemplateResolver(new StringTemplateResolver());
        print("<p></p>", Map.of());
    }

    private String print(String template, Map<String, Object> model) {
        Context page = new Context(Locale.UK, model);
        page.setVariable(ThymeleafEvaluationContext.THYMELEAF_EVALUATION_CONTEXT_CONTEXT_VARIABLE_NAME, expressions);
        return templates.process(template, page);
    }

    @Test
    void aPageReadsRecordsOfSeveralKindsAndMapsWithOneExpression() {
        List<Object> lines =
                List.of(new Cell("a", null), new Line("b"), Map.of("text", "c"), new Cell("d", "/d"), new Line("e"));

        assertThat(print("<p th:each=\"line : ${lines}\" th:text=\"${line.text}\"></p>", Map.of("lines", lines)))
                .isEqualTo("<p>a</p><p>b</p><p>c</p><p>d</p><p>e</p>");
    }

    @Test
    void isAddedOnceForEachPage() {
        print("<p></p>", Map.of());

        List<PropertyAccessor> accessors = expressions.getPropertyAccessors();
        assertThat(accessors).containsOnlyOnce(properties);
        assertThat(accessors.indexOf(properties)).isLessThan(accessors.size() - 1);
    }

    @Test
    void aComponentThatIsNullReadsAsNull() {
        assertThat(read(new Cell("a", null), "href")).isNull();
    }

    @Test
    void whatIsNoComponentIsNotRead() {
        Line line = new Line("a");

        assertThat(properties.canRead(expressions, line, "secret")).isFalse();
        assertThat(properties.canRead(expressions, line, "class")).isFalse();
        assertThat(properties.canRead(expressions, null, "text")).isFalse();
        assertThatThrownBy(() -> read(line, "missing")).isInstanceOf(SpelEvaluationException.class);
    }

    @Test
    void recordsOfOthersAreLeftToTheAccessorThatComesWithTheExpressions() {
        assertThat(properties.canRead(expressions, new UnixDomainPrincipal(() -> "a", () -> "b"), "user"))
                .isFalse();
    }

    @Test
    void nothingIsWritten() {
        assertThat(properties.canWrite(expressions, new Line("a"), "text")).isFalse();
        assertThatThrownBy(() ->
                        new SpelExpressionParser().parseExpression("text").setValue(expressions, new Line("a"), "b"))
                .isInstanceOf(SpelEvaluationException.class);
    }

    private @Nullable Object read(Object target, String name) {
        Expression expression = new SpelExpressionParser().parseExpression(name);
        return expression.getValue(expressions, target);
    }
}
