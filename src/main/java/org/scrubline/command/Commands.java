package org.scrubline.command;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Finds the command a line begins with. Without one, or with {@code serve}, the server starts. */
public final class Commands {

    static final int FINE = 0;
    static final int PROBLEM = 1;
    static final int WRONG_USE = 2;

    private Commands() {}

    /**
     * Runs the command of the line, if it is one that needs no server.
     *
     * @param args the whole line
     * @return the exit code: 0 fine, 1 found a problem, 2 wrong use; empty when the server is to be started
     */
    public static OptionalInt run(List<String> args, PrintStream out, PrintStream err) {
        return run(args, new Terminal(out, err, System.getenv()));
    }

    static OptionalInt run(List<String> args, Terminal terminal) {
        boolean help = args.contains("--help");
        if (!help
                && (args.isEmpty() || args.get(0).equals("serve") || args.get(0).startsWith("--"))) {
            return OptionalInt.empty();
        }
        if ((help && args.get(0).startsWith("--")) || args.get(0).equals("help")) {
            return OptionalInt.of(parser("", terminal).execute("--help"));
        }
        return OptionalInt.of(parser(args.get(0), terminal).execute(args.toArray(String[]::new)));
    }

    /** A parser of the named command alone, which starts sooner; of all of them when it is none of ours. */
    private static CommandLine parser(String first, Terminal terminal) {
        Map<String, Supplier<CommandLine>> commands = commands(terminal);
        CommandLine parser = new CommandLine(new TopCommand());
        addHelp(parser);
        commands.forEach((name, command) -> {
            if (name.equals(first) || !commands.containsKey(first)) {
                CommandLine one = command.get();
                addHelp(one);
                parser.addSubcommand(one);
            }
        });
        return parser.setOut(new PrintWriter(terminal.out(), true, Charset.defaultCharset()))
                .setErr(new PrintWriter(terminal.err(), true, Charset.defaultCharset()))
                .setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF))
                .setExpandAtFiles(false)
                .setParameterExceptionHandler(Commands::notParsed)
                .setExecutionExceptionHandler(Commands::stopped);
    }

    private static Map<String, Supplier<CommandLine>> commands(Terminal terminal) {
        Map<String, Supplier<CommandLine>> commands = new LinkedHashMap<>();
        commands.put("serve", () -> new CommandLine(new ServeCommand()));
        commands.put("demo", () -> new CommandLine(new DemoCommand(terminal)));
        commands.put("curves", () -> new CommandLine(new CurvesCommand(terminal)));
        commands.put("statistic", () -> StatisticCommand.parser(terminal));
        commands.put("verify", () -> new CommandLine(new VerifyCommand(terminal)));
        commands.put("evidence", () -> new CommandLine(new EvidenceCommand(terminal)));
        commands.put("backup", () -> new CommandLine(new BackupCommand(terminal)));
        commands.put("restore", () -> new CommandLine(new RestoreCommand(terminal)));
        return commands;
    }

    private static void addHelp(CommandLine command) {
        command.getCommandSpec()
                .addOption(OptionSpec.builder("--help")
                        .usageHelp(true)
                        .description("this text")
                        .build());
    }

    private static int notParsed(ParameterException problem, String[] args) {
        CommandLine command = problem.getCommandLine();
        if (command.getParent() == null && args.length > 0) {
            command.getErr().println("scrubline: There is no command " + args[0] + ".");
            command.usage(command.getErr());
            return WRONG_USE;
        }
        return wrongUse(command, String.valueOf(problem.getMessage()));
    }

    private static int stopped(Exception problem, CommandLine command, @Nullable ParseResult parsed) throws Exception {
        if (problem instanceof WrongUse wrong) {
            return wrongUse(command, String.valueOf(wrong.getMessage()));
        }
        throw problem;
    }

    private static int wrongUse(CommandLine command, String sentence) {
        command.getErr().println(command.getCommandName() + ": " + sentence);
        command.getErr()
                .print(command.getHelp().synopsisHeading() + command.getHelp().synopsis(0));
        command.getErr().println(command.getCommandSpec().qualifiedName() + " --help says more.");
        return WRONG_USE;
    }
}
