// SPDX-License-Identifier: Apache-2.0
package kerfglow.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import kerfglow.dropins.Dropins;
import kerfglow.host.CheckCatalogue;
import kerfglow.host.Runner;
import kerfglow.views.HelpText;
import kerfglow.views.PlainText;
import org.osgi.framework.Bundle;
import org.osgi.framework.FrameworkUtil;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The words of the command line. What they do stands in {@link CheckCommand} and in the views. */
@Command(name = "kerfglow", mixinStandardHelpOptions = true, versionProvider = Program.Version.class, sortOptions = false, addMethodSubcommands = false,
        description = "Checks the artwork of a sign before any of it reaches CAD or a machine.", synopsisSubcommandLabel = "COMMAND")
final class Program {
    /** The one command that needs no checks. */
    private static final String NEW_CHECK = "new-check";
    /** The commands that check proofs, in the order of the help. */
    static final Set<String> CHECKING = Collections.unmodifiableSet(new LinkedHashSet<>(List.of("check", "report", "worksheet", "pattern", "outlines")));

    @Spec
    private CommandSpec spec;
    @Option(names = "--checks-folder", paramLabel = "FOLDER", scope = ScopeType.INHERIT,
            description = "Where your own checks lie; else what KERFGLOW_CHECKS says, else .kerfglow/checks in your home.")
    private Path checksFolder = Dropins.usualFolder();
    private final Runner runner;
    private final CheckCatalogue catalogue;
    private final OwnChecks ownChecks;
    private final PrintStream out;
    private final PrintStream err;
    private final Terminal terminal;

    /**
     * The program.
     *
     * @param ownChecks the shop's own
     */
    Program(Runner runner, CheckCatalogue catalogue, OwnChecks ownChecks, PrintStream out, PrintStream err, Terminal terminal) {
        this.runner = runner;
        this.catalogue = catalogue;
        this.ownChecks = ownChecks;
        this.out = out;
        this.err = err;
        this.terminal = terminal;
    }

    /** Runs one command; returns the exit status. */
    int run(String... arguments) {
        CommandLine line = new CommandLine(this);
        addCommands(line, arguments.length == 0 ? "" : arguments[0]);
        line.setOut(new PrintWriter(out, true, StandardCharsets.UTF_8));
        line.setErr(new PrintWriter(err, true, StandardCharsets.UTF_8));
        line.setExpandAtFiles(false).setUsageHelpAutoWidth(false).setCaseInsensitiveEnumValuesAllowed(true);
        line.setExecutionStrategy(parsed -> {
            if (parsed.hasSubcommand() && !parsed.subcommand().isUsageHelpRequested() && !parsed.subcommand().commandSpec().name().equals(NEW_CHECK)) {
                ownChecks.use(checksFolder);
            }
            return new CommandLine.RunLast().execute(parsed);
        });
        line.setParameterExceptionHandler((wrong, given) -> {
            err.println(PlainText.of("kerfglow: " + wrong.getMessage()));
            err.println("\"kerfglow " + (wrong.getCommandLine().getCommandName().equals("kerfglow") ? "" : wrong.getCommandLine().getCommandName() + " ")
                    + "--help\" shows the words that there are.");
            return ExitStatus.INPUT.code();
        });
        line.setExecutionExceptionHandler((defect, where, parsed) -> {
            err.println(PlainText.of("kerfglow: the program failed: " + defect) + ". This is a defect of the program; please report it with the file.");
            return ExitStatus.BROKEN.code();
        });
        if (arguments.length == 0) {
            line.usage(out);
            return ExitStatus.INPUT.code();
        }
        int code = line.execute(arguments);
        out.flush();
        return code;
    }

    /** The one that is wanted, where the first word names one that checks: to read the words of all takes longer than to read a sheet. Else all. */
    private void addCommands(CommandLine line, String wanted) {
        if (CHECKING.contains(wanted)) {
            line.addSubcommand(checking(wanted));
        } else {
            line.getCommandSpec().addMethodSubcommands(line.getFactory());
            CHECKING.forEach(name -> line.addSubcommand(checking(name)));
        }
    }

    private Object checking(String name) {
        return switch (name) {
            case "check" -> new CheckCommand(runner, out, err, terminal);
            case "report" -> new ReportCommand(runner, out, err, terminal);
            case "worksheet" -> new WorksheetCommand(runner, out, err, terminal);
            case "pattern" -> new PatternCommand(runner, out, err, terminal);
            default -> new OutlinesCommand(runner, out, err, terminal);
        };
    }

    @Command(name = "checks", description = "Lists the checks, their rules, settings and kinds of stock.", mixinStandardHelpOptions = true)
    int checks() {
        out.print(HelpText.checks(catalogue.entries()));
        catalogue.refused().forEach(refused -> out.println("not used: " + refused.bundle() + ": " + refused.why()));
        return ExitStatus.CLEAR.code();
    }

    @Command(name = NEW_CHECK, description = "Writes the project of a check of your own: it builds with \"mvn package\", and its bundle goes into the checks folder.",
            mixinStandardHelpOptions = true)
    int newCheck(@Parameters(paramLabel = "NAME", description = "OWNER.RISK, for instance acme.seams; the id of the check.") String name,
            @Option(names = "--folder", paramLabel = "FOLDER", description = "Where the project comes to be. Default: NAME.") Path folder) throws IOException {
        Path project = folder == null ? Path.of(name) : folder;
        try {
            List<Path> written = ownChecks.newCheck(name, project);
            out.println("Wrote " + written.size() + " files to " + project + ". Next:");
        } catch (IllegalArgumentException wrong) {
            throw new ParameterException(spec.commandLine(), wrong.getMessage());
        }
        out.println("    cd " + project + " && mvn package");
        out.println("    cp target/" + name + "-1.0.0.jar " + checksFolder + "/");
        return ExitStatus.CLEAR.code();
    }

    @Command(name = "explain", description = "Prints the page of a rule, or of a whole check.", mixinStandardHelpOptions = true)
    int explain(@Parameters(paramLabel = "RULE", description = "For instance router.thin-stroke, or router.") String rule) {
        String page = HelpText.explain(rule, catalogue.entries()).orElseThrow(() -> new ParameterException(spec.commandLine(),
                "there is no rule or check " + rule + "; \"kerfglow checks\" lists them"));
        out.print(page);
        return ExitStatus.CLEAR.code();
    }

    /** The version of the bundle, or "development" on a plain class path. */
    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {"kerfglow " + text()};
        }

        static String text() {
            Bundle bundle = FrameworkUtil.getBundle(Program.class);
            return bundle == null ? "development" : bundle.getVersion().toString();
        }
    }
}
